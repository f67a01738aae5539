/** From the forms of the page to records of the log. */

import { wallClock } from "./clock.js";
import { kgOf, numberOf } from "./loads.js";

/** @typedef {import("./types.js").LogRecord} LogRecord */
/** @typedef {import("./types.js").Work} Work */

/** What is wrong with a form, in words. */
export class Wrong extends Error {}

/** @param {string} kind @param {object} fields @returns {LogRecord} */
export function newRecord(kind, fields) {
  return { kind, id: newId(), at: wallClock(new Date()), ...fields };
}

/** A version 4 UUID, also where the page was not opened over HTTPS. */
function newId() {
  if (crypto.randomUUID) return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((one) => one.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

/**
 * The set that a form tells of.
 * @param {HTMLFormElement} form
 * @param {Work} work
 * @param {"kg"|"lb"} unit
 * @returns {object} fields of the record
 */
export function setFields(form, work, unit) {
  const data = new FormData(form);
  const text = (/** @type {string} */ name) => String(data.get(name) ?? "").trim();
  if (work.measured && text("load") === "" && !bare(work)) throw new Wrong("Write down the load.");
  const load = text("load") === "" ? 0 : kgOf(work, text("load"), unit);
  if (load === null) throw new Wrong("The load is no figure.");
  if (load < -300 || load > 1000) throw new Wrong("The load is out of range.");
  const role = text("role") || "working";
  /** @type {Object<string, any>} */
  const fields = {
    exercise: work.exercise,
    role,
    load_kg: load,
    unit,
    reps: whole(text("reps"), "Repetitions", true),
  };
  if (role === "working") fields.number = Number(text("number")) || 1;
  const partial = whole(text("partial_reps"), "Partial repetitions", false);
  if (partial) fields.partial_reps = partial;
  if (text("rir") === "failed") fields.to_failure = true;
  else if (text("rir")) fields.rir = Number(text("rir"));
  if (text("side")) fields.side = text("side");
  if (data.get("technique")) fields.technique = true;
  if (text("note")) fields.note = text("note");
  const level = Number(text("pain_level"));
  if (level && !text("pain_where")) throw new Wrong("Say where it hurts, under pain.");
  if (level) fields.pain = { where: text("pain_where"), level };
  return fields;
}

/** Whether it can be done with nothing but the body. @param {Work} work */
function bare(work) {
  return work.loads.some((one) => one.kg === 0);
}

/** @param {string} text @param {string} words @param {boolean} needed */
export function whole(text, words, needed) {
  const value = numberOf(text);
  if (value === null && !needed && text === "") return null;
  if (value === null || !Number.isInteger(value) || value < 0 || value > 200) {
    throw new Wrong(`${words}: a whole number from 0 to 200 is needed.`);
  }
  return value;
}

/** Put a set into a form, to be changed. @param {HTMLFormElement} form @param {LogRecord} set */
export function fill(form, set, figure) {
  field(form, "load", figure);
  field(form, "reps", String(set.reps));
  field(form, "number", String(set.number ?? ""));
  field(form, "role", set.role ?? "working");
  field(form, "partial_reps", set.partial_reps ? String(set.partial_reps) : "");
  field(form, "note", set.note ?? "");
  field(form, "pain_level", set.pain ? String(set.pain.level) : "");
  field(form, "pain_where", set.pain?.where ?? "");
  choose(form, "rir", set.to_failure ? "failed" : set.rir === undefined ? "" : String(set.rir));
  choose(form, "side", set.side ?? "");
  const technique = form.elements.namedItem("technique");
  if (technique instanceof HTMLInputElement) technique.checked = Boolean(set.technique);
}

/** @param {HTMLFormElement} form @param {string} name @param {string} value */
export function field(form, name, value) {
  const found = form.elements.namedItem(name);
  if (found instanceof HTMLInputElement || found instanceof HTMLSelectElement) found.value = value;
}

/** @param {HTMLFormElement} form @param {string} name @param {string} value */
export function choose(form, name, value) {
  for (const one of form.querySelectorAll(`input[name="${name}"]`)) {
    if (one instanceof HTMLInputElement) one.checked = one.value === value;
  }
}

/** Show or clear what is wrong with a form. @param {HTMLFormElement} form @param {string} words */
export function complain(form, words) {
  const place = form.querySelector(".form-wrong");
  if (!(place instanceof HTMLElement)) return;
  place.textContent = words;
  place.hidden = words === "";
}
