/** Signing out: send first, then leave nothing behind that somebody else could see. */

import { forgetPeople } from "./store.js";

/** @typedef {import("./day.js").Day} Day */
/** @typedef {import("./sync.js").Sync} Sync */

/** @param {Day} day @param {Sync} sync */
export function watchLeaving(day, sync) {
  const form = document.getElementById("sign-out");
  const words = document.getElementById("sign-out-words");
  if (!(form instanceof HTMLFormElement) || !words) return;
  let asked = false;
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    event.stopPropagation();
    if (!navigator.onLine) {
      words.textContent = "Signing out needs a network.";
      return;
    }
    await sync.send();
    const count = day.waiting.length;
    if (count && !asked) {
      asked = true;
      words.textContent = `${count} not sent yet. They stay on this phone, out of sight, until you join here again. Press once more to sign out.`;
      return;
    }
    await forgetPeople();
    await globalThis.caches?.delete("setwright-page");
    form.submit();
  });
}
