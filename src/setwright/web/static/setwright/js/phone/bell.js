/** The end of a rest, felt or heard where the browser allows it. */

const PATTERN = [200, 100, 200];

/** @returns {HTMLElement|null} */
const at = (/** @type {string} */ id) => document.getElementById(id);

/** Offer the notification; only a press may ask for it. */
export function offerBell() {
  const line = at("bell-line");
  if (!line || !("Notification" in window) || !("serviceWorker" in navigator)) return;
  line.hidden = false;
  const say = () => {
    const words = {
      granted: "You are told when a rest is over, while the phone lets the page run.",
      denied: "The browser does not allow it; its settings can.",
      default: "",
    };
    const place = at("bell-words");
    if (place) place.textContent = words[Notification.permission];
  };
  at("bell")?.addEventListener("click", async () => {
    await Notification.requestPermission();
    say();
  });
  say();
}

/** A rest is over. Nothing of the training is said where others may read it. */
export async function ring() {
  navigator.vibrate?.(PATTERN);
  if (!("Notification" in window) || Notification.permission !== "granted" || !document.hidden) return;
  const worker = await navigator.serviceWorker?.ready;
  await worker?.showNotification("Rest is over", { tag: "rest", body: "The next set is due." });
}
