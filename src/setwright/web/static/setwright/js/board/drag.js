// Dragging with mouse or pen from anywhere on a card, with a finger from its grip.
import { gapAt, hideGap, showGap } from "./drop.js";
import { move, nameOf } from "./send.js";
import { say } from "./say.js";

const FAR = 6;
let drag = null;

export function dragging() {
  document.addEventListener("pointerdown", down);
  document.addEventListener("pointermove", along);
  document.addEventListener("pointerup", up);
  document.addEventListener("pointercancel", stop);
  document.addEventListener("keydown", (event) => { if (event.key === "Escape" && drag) stop(); });
  document.addEventListener("dragstart", (event) => { if (event.target.closest?.(".card")) event.preventDefault(); });
}

function down(event) {
  const card = event.target.closest?.(".card");
  if (!card || event.button || (event.pointerType === "touch" && !event.target.closest(".grip"))) return;
  drag = { card, x: event.clientX, y: event.clientY, under: false, to: null };
}

function along(event) {
  if (!drag) return;
  if (!drag.under) {
    if (Math.hypot(event.clientX - drag.x, event.clientY - drag.y) < FAR) return;
    drag.under = true;
    drag.card.classList.add("carried");
    say(`${nameOf(drag.card)} picked up`);
  }
  drag.to = gapAt(event.clientX, event.clientY);
  if (drag.to) showGap(drag.to);
  else hideGap();
  event.preventDefault();
}

function up() {
  if (!drag) return;
  const { card, to, under } = drag;
  stop();
  if (!under) return;
  // The click that ends a drag opens nothing.
  document.addEventListener("click", swallow, { capture: true, once: true });
  setTimeout(() => document.removeEventListener("click", swallow, { capture: true }), 50);
  if (to) move(card, to.session, to.gap);
}

function swallow(event) {
  event.preventDefault();
  event.stopPropagation();
}

function stop() {
  drag?.card.classList.remove("carried");
  drag = null;
  hideGap();
}
