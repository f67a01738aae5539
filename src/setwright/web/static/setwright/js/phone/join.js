/** Joining: whoever used this phone before leaves nothing in sight. */

import { forgetPeople } from "./store.js";

const form = document.getElementById("join");
if (form instanceof HTMLFormElement) {
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    try {
      await forgetPeople();
      await globalThis.caches?.delete("setwright-page");
    } finally {
      form.submit();
    }
  });
}
