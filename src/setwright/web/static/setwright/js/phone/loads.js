/** Loads as the kit makes them. */

/** @typedef {import("./types.js").Work} Work */

const KG_PER_LB = 0.45359237;

/** @param {string} text @returns {number|null} */
export function numberOf(text) {
  const plain = text.trim().replace(",", ".").replace("\u2212", "-");
  if (plain === "" || !/^[+-]?\d*\.?\d+$|^[+-]?\d+\.$/.test(plain)) return null;
  return Number(plain);
}

/** @param {Work} work @param {string} text figure in the unit @param {"kg"|"lb"} unit */
export function kgOf(work, text, unit) {
  const figure = numberOf(text);
  if (figure === null) return null;
  const known = work.loads.find((one) => Number(one.figure) === figure);
  if (known) return known.kg;
  return unit === "lb" ? figure * KG_PER_LB : figure;
}

/** @param {number} kg @param {"kg"|"lb"} unit */
export function figureOf(kg, unit) {
  return String(Math.round((unit === "lb" ? kg / KG_PER_LB : kg) * 100) / 100);
}

/** The next load the kit has. @param {Work} work @param {string} text @param {1|-1} way */
export function stepped(work, text, way) {
  const figure = numberOf(text) ?? 0;
  if (!work.loads.length) return figureOf(Math.max(figure + way * work.step, 0), "kg");
  const figures = work.loads.map((one) => Number(one.figure));
  const beyond = figures.filter((one) => (way > 0 ? one > figure : one < figure));
  if (!beyond.length) return text;
  return String(way > 0 ? beyond[0] : beyond[beyond.length - 1]);
}

/** @param {Work} work @param {number} kg @param {"kg"|"lb"} unit */
export function wordsOf(work, kg, unit) {
  const known = work.loads.find((one) => Math.abs(one.kg - kg) < 1e-4);
  if (known) return known.words;
  return `${figureOf(kg, unit)} ${unit}${work.pair ? " a hand" : ""}`;
}

/** How plates make a load, or empty. @param {Work} work @param {number|null} kg */
export function recipeOf(work, kg) {
  if (kg === null) return "";
  return work.loads.find((one) => Math.abs(one.kg - kg) < 1e-4)?.how ?? "";
}
