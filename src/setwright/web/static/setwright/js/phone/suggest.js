/** The next set: from the server where there is a network, else looked up in its table. */

import { figureOf, wordsOf } from "./loads.js";
import { countOf, setsOf, troubleOf } from "./state.js";

/** @typedef {import("./types.js").Suggestion} Suggestion */
/** @typedef {import("./types.js").Work} Work */
/** @typedef {import("./types.js").Row} Row */
/** @typedef {import("./types.js").LogRecord} LogRecord */

/**
 * @param {object} known
 * @param {Work} known.work
 * @param {LogRecord[]} known.records of today
 * @param {Row[]} known.rows table of the exercise
 * @param {{first: Suggestion, ids: string}|undefined} known.told the server's, and for which sets
 * @param {{name: string, ends_session: boolean}[]} known.symptoms that stop
 * @param {"kg"|"lb"} known.unit
 * @returns {Suggestion}
 */
export function nextSet({ work, records, rows, told, symptoms, unit }) {
  const sets = setsOf(records, work.exercise);
  const done = countOf(sets);
  const trouble = troubleOf(records, work.exercise, symptoms);
  if (trouble.stop) return over(done + 1, stopWords(trouble));
  if (told && told.ids === idsOf(sets)) return told.first;
  if (!done) return work.sets[0] ?? work.first;
  if (done >= work.sets.length) return over(done + 1, ["All sets of this exercise are done."]);
  const last = sets.at(-1);
  const planned = work.sets[done];
  const row = look(rows, last, done, trouble);
  if (!row) {
    const kg = last.load_kg;
    const because = ["Worked out without a network: the same load as before."];
    return { ...planned, ...loadOf(work, kg, unit), number: done + 1, because };
  }
  const [, , , , , kg, reps, rir, rest_s, why] = row;
  if (kg === null) return over(done + 1, [why]);
  return {
    ...planned,
    ...loadOf(work, kg, unit),
    number: done + 1,
    reps,
    most: Math.max(planned.most, reps),
    rir,
    rest_s,
    because: [why],
  };
}

/** @param {LogRecord[]} sets */
export function idsOf(sets) {
  return sets.map((one) => one.id).sort().join(" ");
}

/**
 * The row that is nearest to what was done: the same load, then repetitions and reserve together.
 * @param {Row[]} rows
 * @param {LogRecord} last
 * @param {number} number
 * @param {{lighter: boolean, notHeavier: boolean}} trouble
 * @returns {Row|undefined}
 */
export function look(rows, last, number, trouble) {
  const own = rows.filter((row) => row[1] === number && Math.abs(row[2] - last.load_kg) < 1e-4);
  const rir = last.to_failure ? 0 : (last.rir ?? null);
  if (trouble.lighter) return nearest(own.filter((row) => row[0] === "lighter"), last, rir);
  const plain = nearest(own.filter((row) => row[0] === "plain"), last, rir);
  if (!plain || !trouble.notHeavier || plain[5] === null || plain[5] <= plain[2]) return plain;
  return nearest(own.filter((row) => row[0] === "not heavier"), last, rir);
}

/** @param {Row[]} rows @param {LogRecord} last @param {number|null} rir */
function nearest(rows, last, rir) {
  const said = rows.filter((row) => (row[4] === null) === (rir === null));
  const off = (/** @type {Row} */ row) => {
    const together = Math.abs(row[3] + (row[4] ?? 0) - last.reps - (rir ?? 0));
    return together + 0.1 * Math.abs((row[4] ?? 0) - (rir ?? 0));
  };
  const among = said.length ? said : rows;
  return among.reduce((best, row) => (best && off(best) <= off(row) ? best : row), among[0]);
}

function loadOf(work, kg, unit) {
  return { kg, figure: figureOf(kg, unit), load: work.measured ? wordsOf(work, kg, unit) : "" };
}

/** @param {number} number @param {string[]} because @returns {Suggestion} */
function over(number, because) {
  return {
    number, kg: null, figure: "", load: "", reps: 0, most: 0, rir: 0,
    failure: false, rest_s: 0, over: true, because,
  };
}

function stopWords(trouble) {
  if (trouble.symptoms.length) {
    return [
      `Stop: ${trouble.symptoms.join(" and ")} was reported.`,
      "A licensed professional should clear training before this is done again.",
    ];
  }
  return [
    `Pain ${trouble.pain} of 10: leave this exercise for today; choose another with your coach.`,
    "If it stays or grows, ask a licensed professional.",
  ];
}
