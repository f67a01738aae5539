/** The day on this phone: what is planned, what was logged, and what comes next. */

import { dateOf, wallClock } from "./clock.js";
import { newRecord } from "./form.js";
import { setsOf, standing } from "./state.js";
import { forget, keep, keepDay, recordsOf } from "./store.js";
import { idsOf, nextSet } from "./suggest.js";

/** @typedef {import("./types.js").KeptDay} KeptDay */
/** @typedef {import("./types.js").Kept} Kept */
/** @typedef {import("./types.js").LogRecord} LogRecord */
/** @typedef {import("./types.js").Suggestion} Suggestion */
/** @typedef {import("./types.js").Work} Work */
/** @typedef {"now"|"then"} Which */

export class Day {
  /** @param {KeptDay} kept */
  constructor(kept) {
    this.kept = kept;
    /** @type {Kept[]} */
    this.onPhone = [];
    /** @type {Map<string, {first: Suggestion, ids: string}>} */
    this.told = new Map();
    /** @type {Set<() => void>} */
    this.listeners = new Set();
    this.channel = new BroadcastChannel("setwright-phone");
    this.channel.onmessage = () => this.reload();
    this.take(kept);
  }

  get unit() {
    return this.kept.document.unit;
  }

  get person() {
    return this.kept.person;
  }

  get safety() {
    return this.kept.document.safety;
  }

  /** Take in what the server knows of the day now. @param {KeptDay} kept */
  take(kept) {
    this.kept = kept;
    this.told.clear();
    const { now, records } = kept.document;
    for (const place of now?.places ?? []) {
      for (const work of [place.own, place.other]) {
        if (work) this.tell(work.exercise, work.first, records);
      }
    }
  }

  /** The server's next set, and the records it was worked out from. */
  tell(exercise, first, records) {
    this.told.set(exercise, { first, ids: idsOf(setsOf(records, exercise)) });
  }

  /** Records of today that hold. @returns {LogRecord[]} */
  get records() {
    return standing(this.kept.document.records, this.onPhone, dateOf(new Date()));
  }

  get waiting() {
    return this.onPhone.filter((one) => one.state === "waiting");
  }

  get refused() {
    return this.onPhone.filter((one) => one.state === "refused");
  }

  /** @param {string} exercise @param {Which} which @returns {Work|undefined} */
  work(exercise, which = "now") {
    const { now, then } = this.kept.document;
    const meetings = which === "now" ? [now, then] : [then, now];
    const places = meetings.flatMap((one) => one?.places ?? []);
    const works = places.flatMap((one) => [one.own, one.other]);
    return works.find((one) => one?.exercise === exercise) ?? undefined;
  }

  /** Whether today's sets of an exercise belong to a session. @param {Which} which */
  counts(exercise, which) {
    const { now, day } = this.kept.document;
    // On another day than the page's, either of its sessions may be the one that is done.
    if (which === "now" || !now || day !== dateOf(new Date())) return true;
    return !now.places.some((one) => [one.own, one.other].some((w) => w?.exercise === exercise));
  }

  /** @param {Work} work @param {Which} which @returns {Suggestion} */
  next(work, which) {
    return nextSet({
      work,
      records: this.counts(work.exercise, which) ? this.records : [],
      rows: this.kept.tables[work.exercise] ?? [],
      told: which === "now" || !this.kept.document.now ? this.told.get(work.exercise) : undefined,
      symptoms: this.safety.symptoms,
      unit: this.unit,
    });
  }

  /** Log records: on the phone before anything is shown. @param {LogRecord[]} records */
  async add(...records) {
    const made = Date.now();
    await keep(
      records.map((record, n) => ({
        id: record.id, person: this.person, record, state: "waiting", why: [], made: made + n / 100,
      })),
    );
    await this.reload();
    this.channel.postMessage("changed");
  }

  /** @param {string} id */
  takeBack(id) {
    return this.add(newRecord("withdrawn", { of: id }));
  }

  /** A record that the server would not take is given up. @param {string} id */
  async drop(id) {
    await forget([id]);
    await this.reload();
  }

  /** A record that the server would not take is sent once more, as a new one. */
  async again(id) {
    const old = this.onPhone.find((one) => one.id === id);
    if (!old) return;
    const fresh = newRecord(old.record.kind, {});
    await this.add({ ...old.record, id: fresh.id });
    await this.drop(id);
  }

  /** Read the phone's records anew, and tell everybody. */
  async reload() {
    this.onPhone = await recordsOf(this.person);
    for (const listener of this.listeners) listener();
  }

  /** Keep what the server said of the day, and let go of what it has told us of. */
  async renew(kept, asked) {
    await keepDay(kept);
    const told = (one) => one.state === "sent" && one.made < asked;
    await forget(this.onPhone.filter(told).map((one) => one.id));
    this.take(kept);
    await this.reload();
  }

  /** Rest before a set that is done now, as far as it can be told, s. @param {Work} work */
  restBefore(work, reps) {
    const last = setsOf(this.records, work.exercise).at(-1);
    if (!last) return undefined;
    const since = (Date.parse(wallClock(new Date())) - Date.parse(last.at)) / 1000;
    const rest = Math.round(since - reps * work.rep_s);
    return rest >= 0 && rest <= LONGEST_REST_S ? rest : undefined;
  }
}

const LONGEST_REST_S = 1800;
