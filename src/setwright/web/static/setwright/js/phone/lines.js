/** What was logged, line by line. */

import { wordsOf } from "./loads.js";

/** @typedef {import("./types.js").LogRecord} LogRecord */
/** @typedef {import("./types.js").Work} Work */

const TWICE =
  "Two sets carry this number, from two devices. Both are kept; take one back if it was one.";

/** @param {LogRecord} set @param {Work|undefined} work @param {"kg"|"lb"} unit */
export function setWords(set, work, unit) {
  const head = { working: "Set", "warm-up": "Warm-up", drop: "Drop set" }[set.role ?? "working"];
  const number = set.number && (set.role ?? "working") === "working" ? ` ${set.number}` : "";
  const load = !work || work.measured ? `${loadWords(set, work, unit)} × ` : "";
  const partial = set.partial_reps ? ` + ${set.partial_reps} partial` : "";
  const words = [`${head}${number}: ${load}${set.reps}${partial}`];
  if (set.side) words.push(set.side);
  if (set.to_failure) words.push("to failure");
  else if (set.rir !== undefined) words.push(`${set.rir} left`);
  if (set.pain) words.push(`pain ${set.pain.level} of 10, ${set.pain.where}`);
  if (set.technique) words.push("technique broke down");
  words.push(...(set.symptoms ?? []));
  if (set.note) words.push(`“${set.note}”`);
  return words.join(", ");
}

function loadWords(set, work, unit) {
  if (work) return wordsOf(work, set.load_kg, unit);
  return `${Math.round(set.load_kg * 100) / 100} kg`;
}

/**
 * @param {LogRecord} one
 * @param {(exercise: string) => Work|undefined} work
 * @param {"kg"|"lb"} unit
 */
export function wordsFor(one, work, unit) {
  const name = (/** @type {string} */ id) => work(id)?.name ?? id;
  switch (one.kind) {
    case "set":
      return setWords(one, work(one.exercise), unit);
    case "skipped":
      return `Left out: ${one.reason}`;
    case "replaced":
      return `Done as ${name(one.by)}: ${one.reason}`;
    case "missed":
      return `${one.session} left out: ${one.reason}`;
    case "body_mass":
      return `Body mass ${Math.round((unit === "lb" ? one.kg / 0.45359237 : one.kg) * 10) / 10} ${unit}`;
    default:
      return "Taken back";
  }
}

/**
 * A line with its buttons.
 * @param {{id: string, words: string, twice: boolean, waits: boolean}} line
 * @param {{change?: () => void, takeBack: () => void}} acts
 */
export function lineItem(line, acts) {
  const item = document.createElement("li");
  item.className = "logged";
  item.dataset.id = line.id;
  item.append(piece("said", line.words));
  if (line.waits) item.append(piece("waits", "waits for a network"));
  if (line.twice) item.append(piece("twice", TWICE));
  const buttons = document.createElement("span");
  buttons.className = "acts";
  if (acts.change) buttons.append(button("Change", line.words, acts.change));
  buttons.append(button("Take back", line.words, acts.takeBack));
  item.append(buttons);
  return item;
}

function piece(kind, words) {
  const span = document.createElement("span");
  span.className = kind;
  span.textContent = words;
  return span;
}

function button(words, of, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = "quiet";
  made.textContent = words;
  made.setAttribute("aria-label", `${words}: ${of}`);
  made.addEventListener("click", act);
  return made;
}
