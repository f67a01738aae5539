/** Symptoms that stop training: reported in a few taps, answered at once, also without a network. */

import { complain, newRecord } from "./form.js";

/** @typedef {import("./day.js").Day} Day */

/** @param {Day} day @param {(exercise: string) => number} loadOf kg last used or asked for */
export function watchStop(day, loadOf) {
  for (const link of document.querySelectorAll(".stop-link")) {
    link.addEventListener("click", () => document.getElementById("stop")?.setAttribute("open", ""));
  }
  const form = document.querySelector("form.symptoms");
  const answer = document.getElementById("stop-words");
  if (!(form instanceof HTMLFormElement) || !answer) return;
  form.addEventListener("change", () => {
    const ticked = new FormData(form).getAll("symptoms").map(String);
    show(answer, advice(day, ticked));
  });
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const data = new FormData(form);
    const symptoms = data.getAll("symptoms").map(String);
    if (!symptoms.length) {
      complain(form, "Tick what it is. For pain in a set, write it down with the set.");
      return;
    }
    complain(form, "");
    const exercise = String(data.get("exercise"));
    const note = String(data.get("note") ?? "").trim();
    await day.add(
      newRecord("set", {
        exercise, load_kg: loadOf(exercise), unit: day.unit, reps: 0, symptoms,
        ...(note ? { note } : {}),
      }),
    );
    form.reset();
    say(day, answer, symptoms);
  });
}

/** What to do about symptoms. @param {Day} day @param {string[]} symptoms */
function advice(day, symptoms) {
  const known = day.safety.symptoms.filter((one) => symptoms.includes(one.name));
  return [...new Set(known.flatMap((one) => one.words))];
}

/** @param {Day} day @param {HTMLElement} place @param {string[]} symptoms */
function say(day, place, symptoms) {
  const ends = day.safety.symptoms.some((one) => one.ends_session && symptoms.includes(one.name));
  const head = ends ? "Stop training for today." : "Stop this exercise.";
  const reported = `${symptoms.join(" and ")} was reported.`;
  const scope = "This is no diagnosis; a licensed professional decides what it is.";
  show(place, [`${head} ${reported} ${scope}`, ...advice(day, symptoms)]);
  place.focus();
}

/** @param {HTMLElement} place @param {string[]} words */
function show(place, words) {
  place.className = words.length ? "wrong" : "";
  place.replaceChildren(
    ...words.map((text) => {
      const line = document.createElement("p");
      line.textContent = text;
      return line;
    }),
  );
}
