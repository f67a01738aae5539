/** The page without a network: the service worker keeps it. */

/** @param {DOMStringMap} page */
export async function keepsPages(page) {
  const place = document.getElementById("ready");
  const say = (/** @type {string} */ words) => {
    if (place) place.textContent = words;
  };
  if (!("serviceWorker" in navigator)) {
    say("This browser cannot open the page without a network; what you log still waits safely.");
    return;
  }
  try {
    await navigator.serviceWorker.register(page.worker ?? "", { type: "module", scope: page.scope });
    await navigator.serviceWorker.ready;
    say("The page opens without a network, too.");
    document.documentElement.classList.add("offline-ready");
    await navigator.storage?.persist?.();
  } catch {
    say("This browser could not keep the page for a time without a network.");
  }
}
