/** Everything that is no set: swaps, what is left out, body mass, and what was not taken. */

import { complain, newRecord } from "./form.js";
import { lineItem, wordsFor } from "./lines.js";
import { numberOf } from "./loads.js";

/** @typedef {import("./day.js").Day} Day */

const KG_PER_LB = 0.45359237;

/** Keep the plain forms of the page from leaving it. @param {Day} day */
export function watchForms(day) {
  document.addEventListener("submit", async (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || event.defaultPrevented) return;
    const record = recordOf(form, day);
    if (record === undefined) return;
    event.preventDefault();
    if (record) {
      await day.add(record);
      form.reset();
    }
  });
}

/** The form's record; null when it is not in order, undefined for a form that is none of these. */
function recordOf(form, day) {
  const data = Object.fromEntries(new FormData(form).entries());
  const { kind, exercise, reason, by, session, of } = data;
  switch (kind) {
    case "skipped":
      return newRecord(kind, { exercise, reason });
    case "replaced":
      return newRecord(kind, { exercise, by, reason });
    case "missed":
      return newRecord(kind, { session, reason });
    case "withdrawn":
      return newRecord(kind, { of });
    case "body_mass": {
      const mass = numberOf(String(data.mass));
      const kg = mass === null ? 0 : mass * (day.unit === "lb" ? KG_PER_LB : 1);
      const fine = kg >= 30 && kg <= 300;
      complain(form, fine ? "" : "A figure between 30 and 300 kg is needed.");
      return fine ? newRecord(kind, { kg }) : null;
    }
    default:
      return undefined;
  }
}

/** Lines that stand under no exercise on the page. @param {Day} day */
export function renderBesides(day) {
  const shown = new Set([...document.querySelectorAll(".work")].map((one) => one.dataset.exercise));
  const place = document.getElementById("other-lines");
  const waits = new Set(day.waiting.map((one) => one.id));
  const items = day.records
    .filter((one) => !shown.has(one.by ?? one.exercise))
    .map((one) =>
      lineItem(
        { id: one.id, words: words(one, day), twice: false, waits: waits.has(one.id) },
        { takeBack: () => day.takeBack(one.id) },
      ),
    );
  place?.replaceChildren(...items);
  renderRefused(day);
}

/** @param {Day} day */
function renderRefused(day) {
  const part = document.getElementById("refused");
  if (!part) return;
  part.hidden = !day.refused.length;
  const items = day.refused.map((one) => {
    const item = document.createElement("li");
    item.className = "logged";
    const said = document.createElement("span");
    said.textContent = `${words(one.record, day)}: ${one.why.join("; ")}`;
    item.append(said, button("Send it once more", () => day.again(one.id)));
    item.append(button("Remove it", () => day.drop(one.id)));
    return item;
  });
  part.querySelector("ul")?.replaceChildren(...items);
}

function words(record, day) {
  return wordsFor(record, (id) => day.work(id), day.unit);
}

function button(text, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  made.addEventListener("click", act);
  return made;
}
