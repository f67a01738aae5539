/** The end of a session: what was done, what is left, and leaving it out with a reason. */

import { minutes } from "./clock.js";
import { newRecord } from "./form.js";

/** @typedef {import("./day.js").Day} Day */
/** @typedef {import("./walk.js").Walk} Walk */

export class Finish {
  /** @param {Walk} walk @param {Day} day */
  constructor(walk, day) {
    this.walk = walk;
    this.day = day;
    this.part = /** @type {HTMLElement} */ (walk.meeting.querySelector(".finish"));
    this.form = /** @type {HTMLFormElement} */ (this.part.querySelector("form.end"));
    this.form.addEventListener("submit", async (event) => {
      event.preventDefault();
      const reason = String(new FormData(this.form).get("reason"));
      const skips = this.untouched.map((stop) => newRecord("skipped", { exercise: stop.now.id, reason }));
      if (skips.length) await this.day.add(...skips);
    });
  }

  get untouched() {
    return this.walk.stops.filter((stop) => stop.open && !stop.done);
  }

  render() {
    const stops = this.walk.stops;
    const sets = stops.flatMap((stop) =>
      stop.exercises.flatMap((one) =>
        one.records.filter((record) => record.kind === "set" && record.exercise === one.id),
      ),
    );
    const done = stops.reduce((sum, stop) => sum + stop.done, 0);
    const planned = stops.reduce((sum, stop) => sum + stop.planned, 0);
    const times = sets.map((one) => Date.parse(one.at)).sort((a, b) => a - b);
    const lasted = times.length > 1 ? `, ${minutes((times[times.length - 1] - times[0]) / 1000)} min from the first to the last` : "";
    const open = stops.filter((stop) => stop.open);
    const words = [`${done} of ${planned} sets done${lasted}.`];
    if (done && !open.length) words.push(`That is the session. ${this.coming}`);
    const begun = open.filter((stop) => stop.done);
    if (done && begun.length) {
      const rest = begun.map((stop) => `${stop.now.work?.name} ${stop.done} of ${stop.planned}`);
      words.push(`Under way: ${rest.join(", ")}.`);
    }
    /** @type {HTMLElement} */ (this.part.querySelector(".sum")).textContent = words.join(" ");
    const untouched = this.untouched;
    this.form.hidden = !done || !untouched.length;
    const names = untouched.map((stop) => stop.now.work?.name).join(", ");
    /** @type {HTMLElement} */ (this.form.querySelector(".undone")).textContent = `Not begun: ${names}.`;
  }

  get coming() {
    const { now, then } = this.day.kept.document;
    const next = this.walk.meeting.dataset.which === "now" && now ? then : null;
    return next ? `Next: ${next.name}, ${next.words}.` : "";
  }
}
