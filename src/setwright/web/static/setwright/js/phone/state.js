/** Where the day stands: the records that hold, and what they say of an exercise. */

/** @typedef {import("./types.js").LogRecord} LogRecord */
/** @typedef {import("./types.js").Kept} Kept */

// Pain above this stops an exercise for the day, as the engine has it.
export const STOPS_ABOVE = 5;
const LIGHTER_ABOVE = 3;

/**
 * Records of a day that hold: those the server told of and those on this phone, each once.
 * @param {LogRecord[]} told
 * @param {Kept[]} kept
 * @param {string} day
 * @returns {LogRecord[]} in the order of time
 */
export function standing(told, kept, day) {
  /** @type {Map<string, LogRecord>} */
  const all = new Map(told.map((one) => [one.id, one]));
  for (const one of kept) if (one.state !== "refused") all.set(one.id, one.record);
  const gone = new Set([...all.values()].filter((r) => r.kind === "withdrawn").map((r) => r.of));
  const held = [...all.values()].filter(
    (one) => one.kind !== "withdrawn" && !gone.has(one.id) && one.at.slice(0, 10) === day,
  );
  const place = (/** @type {LogRecord} */ one) => one.number ?? 0;
  return held.sort((a, b) => a.at.localeCompare(b.at) || place(a) - place(b));
}

/** @param {LogRecord[]} records @param {string} exercise working sets, in order */
export function setsOf(records, exercise) {
  return records.filter(
    (one) => one.kind === "set" && one.exercise === exercise && (one.role ?? "working") === "working",
  );
}

/**
 * Working sets that count: those of the two sides of one number are one.
 * @param {LogRecord[]} sets
 */
export function countOf(sets) {
  const sides = new Set();
  let count = 0;
  for (const one of sets.filter((set) => set.reps + (set.partial_reps ?? 0) > 0)) {
    const other = `${one.number} ${one.side === "left" ? "right" : "left"}`;
    if (one.side && sides.has(other)) {
      sides.delete(other);
      continue;
    }
    if (one.side) sides.add(`${one.number} ${one.side}`);
    count += 1;
  }
  return count;
}

/**
 * The side that is still to do of the last set, when only one was.
 * @param {LogRecord[]} sets
 * @returns {"left"|"right"|""}
 */
export function otherSide(sets) {
  const last = sets.at(-1);
  if (!last?.side) return "";
  const sides = new Set(sets.filter((one) => one.number === last.number).map((one) => one.side));
  if (sides.size > 1) return "";
  return last.side === "left" ? "right" : "left";
}

/** Ids of sets whose number was given twice, on two devices. @param {LogRecord[]} records */
export function doubled(records) {
  /** @type {Map<string, string[]>} */
  const places = new Map();
  for (const one of records) {
    if (one.kind !== "set" || (one.role ?? "working") !== "working" || !one.number) continue;
    const key = `${one.exercise} ${one.number} ${one.side ?? ""}`;
    places.set(key, [...(places.get(key) ?? []), one.id]);
  }
  return new Set([...places.values()].filter((ids) => ids.length > 1).flat());
}

/**
 * What was reported on an exercise today.
 * @param {LogRecord[]} records
 * @param {string} exercise
 * @param {{name: string, ends_session: boolean}[]} known symptoms
 */
export function troubleOf(records, exercise, known) {
  const sets = records.filter((one) => one.kind === "set");
  const own = sets.filter((one) => one.exercise === exercise);
  const ends = new Set(known.filter((one) => one.ends_session).map((one) => one.name));
  const anywhere = sets.flatMap((one) => one.symptoms ?? []).filter((one) => ends.has(one));
  const symptoms = [...new Set([...anywhere, ...own.flatMap((one) => one.symptoms ?? [])])];
  const pain = Math.max(0, ...own.map((one) => one.pain?.level ?? 0));
  const technique = own.some((one) => one.technique);
  return {
    symptoms,
    pain,
    stop: symptoms.length > 0 || pain > STOPS_ABOVE,
    lighter: pain > LIGHTER_ABOVE,
    notHeavier: pain > 0 || technique,
  };
}
