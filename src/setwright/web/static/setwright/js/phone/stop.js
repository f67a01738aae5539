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

/** @param {Day} day @param {HTMLElement} place @param {string[]} symptoms */
function say(day, place, symptoms) {
  const known = day.safety.symptoms.filter((one) => symptoms.includes(one.name));
  const ends = known.some((one) => one.ends_session);
  const head = ends ? "Stop training for today." : "Stop this exercise.";
  const words = [
    `${head} ${symptoms.join(" and ")} was reported. This is no diagnosis; a licensed professional decides what it is.`,
    ...new Set(known.flatMap((one) => one.words)),
  ];
  place.replaceChildren(
    ...words.map((text) => {
      const line = document.createElement("p");
      line.textContent = text;
      return line;
    }),
  );
  place.className = "wrong";
  place.focus();
}
