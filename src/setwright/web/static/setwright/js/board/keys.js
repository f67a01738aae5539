// The keyboard: arrows look, Space picks up and puts down, and a few keys for what is done often.
import { look } from "./answers.js";
import { hideGap, showGap } from "./drop.js";
import { board, cards, move, nameOf, order, placeOf, send } from "./send.js";
import { say } from "./say.js";

const ARROWS = { ArrowUp: [0, -1], ArrowDown: [0, 1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] };
let carried = null;

export function keys() {
  document.addEventListener("keydown", pressed);
  document.addEventListener("focusin", (event) => { if (carried && event.target !== carried.card) letGo(); });
}

function pressed(event) {
  const typing = event.target.closest?.("input, textarea, select");
  if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "z" && !typing) {
    event.preventDefault();
    send(event.shiftKey ? board().dataset.redo : board().dataset.undo, {});
    return;
  }
  const card = event.target.closest?.(".card");
  if (!card || event.altKey || event.ctrlKey || event.metaKey) return;
  if (ARROWS[event.key]) (carried ? carry : walk)(card, ARROWS[event.key]);
  else if (event.key === " " || (carried && event.key === "Enter")) (carried ? putDown : pickUp)(card);
  else if (event.key === "Escape" && carried) letGo(`${nameOf(card)} stays where it was`);
  else if (event.key === "Enter") look(card);
  else if (event.key === "+") order(card, "sets", { by: 1 });
  else if (event.key === "-") order(card, "sets", { by: -1 });
  else if (event.key === "Delete") order(card, "remove");
  else if (event.key.toLowerCase() === "l") lock(card);
  else return;
  event.preventDefault();
}

const inDay = (session) => cards().filter((card) => placeOf(card)[0] === session);

function walk(card, [across, down]) {
  const [session, position] = placeOf(card);
  const there = inDay(session + across);
  const wanted = across ? nearest(card, there) : inDay(session)[position + down];
  wanted?.focus();
}

// Beside a card is what stands at the same minute of the other day.
function nearest(card, there) {
  const top = card.getBoundingClientRect().top;
  return there.toSorted((one, other) => gap(one, top) - gap(other, top))[0];
}

const gap = (card, top) => Math.abs(card.getBoundingClientRect().top - top);

function pickUp(card) {
  const [session, position] = placeOf(card);
  carried = { card, session, position, from: [session, position] };
  card.classList.add("carried");
  say(`${nameOf(card)} picked up. Arrow keys carry it, Space puts it down, Escape lets it back.`);
}

// The place is counted without the carried exercise itself, as a list one reads.
function carry(card, [across, down]) {
  const session = carried.session + across;
  const others = inDay(session).filter((one) => one !== card);
  if (across && !inDay(session).length) return;
  const position = across ? Math.min(carried.position, others.length) : carried.position + down;
  if (position < 0 || position > others.length) return;
  Object.assign(carried, { session, position });
  const day = board().querySelector(`.day[data-session="${session}"]`);
  showGap({ day, gap: gapOf() });
  const name = day.querySelector("h2").firstElementChild.firstChild.textContent.trim();
  say(`${name}, place ${position + 1} of ${others.length + 1}`);
}

function gapOf() {
  const { session, position, from } = carried;
  return session === from[0] && position >= from[1] ? position + 1 : position;
}

function putDown(card) {
  const { session } = carried;
  const gap = gapOf();
  letGo();
  move(card, session, gap);
}

function letGo(words) {
  carried.card.classList.remove("carried");
  carried = null;
  hideGap();
  if (words) say(words);
}

function lock(card) {
  const day = card.closest(".day").querySelector("h2 a").firstChild.textContent.trim().toLowerCase();
  const on = card.classList.contains("locked") ? "no" : "yes";
  send(board().dataset.lock, { key: `${day}/${card.dataset.exercise}`, on, at: card.dataset.at });
}
