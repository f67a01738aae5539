// What the server answers: refusals are shown too, and the focus stays where the work is.
import { board, cards } from "./send.js";
import { say } from "./say.js";

const SHOWN = [409, 422];
let held = "";

export function answers() {
  document.body.addEventListener("htmx:beforeSwap", (event) => {
    if (SHOWN.includes(event.detail.xhr.status)) {
      event.detail.shouldSwap = true;
      event.detail.isError = false;
    }
  });
  document.body.addEventListener("htmx:beforeRequest", () => {
    held = document.activeElement?.closest("#panel") ? "panel" : "";
  });
  document.body.addEventListener("htmx:afterSwap", (event) => {
    const status = event.detail.xhr?.status;
    if (status === 409) document.querySelector("#notice button")?.focus();
    else if (event.detail.target.id === "board") swapped();
    else if (event.detail.target.id === "panel") opened();
  });
  document.body.addEventListener("htmx:sendError", () => say("The server cannot be reached. Nothing was changed."));
  document.body.addEventListener("click", open);
}

// A click on a card opens it in the panel; with the middle button or a key held it stays a link.
function open(event) {
  const card = event.target.closest(".card");
  if (!card || event.defaultPrevented || event.ctrlKey || event.metaKey || event.shiftKey || event.button) return;
  event.preventDefault();
  look(card);
}

export function look(card) {
  for (const other of cards()) other.removeAttribute("aria-current");
  card.setAttribute("aria-current", "true");
  const address = card.getAttribute("href");
  window.history.replaceState(null, "", address);
  window.htmx.ajax("GET", address, { target: "#panel", swap: "innerHTML" });
}

function swapped() {
  const { said, at } = board().dataset;
  if (said) say(said);
  if (held === "panel") document.getElementById("panel").focus({ preventScroll: true });
  else if (at) document.querySelector(`.card[data-at="${at}"]`)?.focus({ preventScroll: true });
}

function opened() {
  const panel = document.getElementById("panel");
  const wrong = panel.querySelector("[role=alert]");
  say(wrong ? wrong.textContent : panel.querySelector("h2")?.textContent ?? "");
  if (panel.getBoundingClientRect().top > window.innerHeight) panel.scrollIntoView({ block: "nearest" });
}
