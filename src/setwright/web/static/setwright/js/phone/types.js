/**
 * Shapes that the modules share; made by the server in phone/document.py.
 *
 * @typedef {{kg: number, figure: string, words: string, how: string}} LoadStep
 *
 * @typedef {object} Suggestion
 * @property {number} number set it is, from 1
 * @property {number|null} kg as lifted
 * @property {string} figure the load as it is written into the field
 * @property {string} load the load in words
 * @property {number} reps to aim at
 * @property {number} most to stop at even when more is left
 * @property {number} rir to stop at, as felt
 * @property {boolean} failure as many as possible
 * @property {number} rest_s before it
 * @property {boolean} over nothing more of this exercise
 * @property {string[]} because
 *
 * @typedef {object} Work
 * @property {string} exercise
 * @property {string} name
 * @property {string} superset letter, or empty
 * @property {"both"|"one"} sides
 * @property {boolean} pair the load is of one hand
 * @property {boolean} measured
 * @property {LoadStep[]} loads rising; empty where any load can be had
 * @property {number} step of the buttons then, in the unit
 * @property {Suggestion[]} sets
 * @property {Suggestion} first
 * @property {number} rep_s
 *
 * @typedef {{at: string, own: Work, other: Work|null, done_as: string|null}} Place
 * @typedef {{name: string, day: string, version: string, places: Place[]}} Meeting
 *
 * One line of a log; its fields depend on its kind.
 * @typedef {{kind: string, id: string, at: string, [field: string]: any}} LogRecord
 *
 * Kind, number, kg, reps, rir of the set done; kg, reps, rir, rest of the next; why.
 * @typedef {[string, number, number, number, number|null,
 *   number|null, number, number, number, string]} Row
 *
 * @typedef {object} DayDocument
 * @property {string} day
 * @property {"kg"|"lb"} unit
 * @property {Meeting|null} now
 * @property {Meeting|null} then
 * @property {string[]} symptoms reported and not cleared
 * @property {LogRecord[]} records of the day
 * @property {{symptoms: {name: string, words: string[], ends_session: boolean}[],
 *   pain: string[], pain_words: string, hints: string[]}} safety
 *
 * What the phone keeps of a day.
 * @typedef {object} KeptDay
 * @property {string} person
 * @property {string} csrf
 * @property {string} sync address that takes records
 * @property {string} source address of the document
 * @property {DayDocument} document
 * @property {Object<string, Row[]>} tables
 *
 * A record on this phone.
 * @typedef {object} Kept
 * @property {string} id
 * @property {string} person
 * @property {LogRecord} record
 * @property {"waiting"|"sent"|"refused"} state
 * @property {string[]} why it was refused
 * @property {number} made when, ms
 */
export {};
