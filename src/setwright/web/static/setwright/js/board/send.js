// Orders sent from mouse and keyboard: the same posts as the forms make.
export const board = () => document.getElementById("board");
export const cards = () => [...board().querySelectorAll(".card")];
export const placeOf = (card) => card.dataset.at.split(".").map(Number);
export const nameOf = (card) => card.querySelector("b").textContent.trim();

let under = false;

export async function send(path, fields) {
  if (under) return;
  under = true;
  try {
    await window.htmx.ajax("POST", path, {
      source: board(),
      target: "#board",
      swap: "outerHTML",
      values: { base: board().dataset.base, ...fields },
    });
  } finally {
    under = false;
  }
}

export const order = (card, what, fields = {}) =>
  send(board().dataset.edit, { do: what, at: card.dataset.at, exercise: card.dataset.exercise, ...fields });

// Moves an exercise before what stands at a place, unless it stands there already.
export function move(card, session, gap) {
  const [from, position] = placeOf(card);
  if (session === from && (gap === position || gap === position + 1)) return;
  order(card, "move", { to: `${session}.${gap}` });
}
