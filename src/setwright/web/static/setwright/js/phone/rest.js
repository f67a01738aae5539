/** The rest: told by the clock, so that it is right again after the screen was locked. */

import { minutes } from "./clock.js";
import { setsOf } from "./state.js";

/** @typedef {import("./exercise.js").Exercise} Exercise */

const KEY = "setwright-rest";
const STEP_S = 15;
// A rest that ended so long ago is no longer spoken of.
const STALE_S = 900;

/** @returns {HTMLElement} */
const at = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));

export class Rest {
  /** @param {() => Exercise|undefined} current @param {() => void} ended */
  constructor(current, ended) {
    this.current = current;
    this.ended = ended;
    this.bar = at("rest");
    at("rest-less").addEventListener("click", () => this.shift(-STEP_S));
    at("rest-more").addEventListener("click", () => this.shift(STEP_S));
    at("rest-end").addEventListener("click", () => this.mark({ enough: true }));
    document.addEventListener("visibilitychange", () => this.show());
    setInterval(() => this.show(), 1000);
  }

  /** What was said of the rest after a set: longer, shorter, enough, announced. */
  said(id) {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    return kept.id === id ? kept : { id, more: 0, enough: false, told: false };
  }

  mark(change) {
    const set = this.after();
    if (!set) return;
    localStorage.setItem(KEY, JSON.stringify({ ...this.said(set.id), ...change }));
    this.show();
  }

  shift(seconds) {
    const set = this.after();
    if (set) this.mark({ more: this.said(set.id).more + seconds, told: false });
  }

  /** The set that is rested from: the last one of the exercise at hand. */
  after() {
    const exercise = this.current();
    const sets = exercise ? setsOf(exercise.records, exercise.id) : [];
    return sets.at(-1);
  }

  show() {
    const exercise = this.current();
    const set = this.after();
    const next = set && exercise?.next;
    const said = set && this.said(set.id);
    const due = set && next && !next.over && next.rest_s > 0 && !exercise.leftOut && !said.enough;
    const left = due ? Date.parse(set.at) / 1000 + next.rest_s + said.more - Date.now() / 1000 : 0;
    this.bar.hidden = !due || left < -STALE_S;
    document.body.classList.toggle("resting", !this.bar.hidden);
    if (this.bar.hidden) return;
    at("rest-clock").textContent = left > 0 ? minutes(left) : `+${minutes(-left)}`;
    at("rest-words").textContent = left > 0 ? `of ${minutes(next.rest_s + said.more)} rest` : "rest is over";
    this.bar.classList.toggle("past", left <= 0);
    if (left > 0 || said.told) return;
    localStorage.setItem(KEY, JSON.stringify({ ...said, told: true }));
    at("rest-over").textContent = `Rest is over. Set ${next.number} of ${exercise.work?.name}.`;
    this.ended();
  }
}
