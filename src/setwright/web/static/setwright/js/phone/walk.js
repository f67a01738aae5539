/** Walking through a session: one exercise at a time, or the whole list. */

import { countOf, setsOf } from "./state.js";

/** @typedef {import("./exercise.js").Exercise} Exercise */

const VIEW = "setwright-view";

/** One place of the session: the exercise of the plan and, perhaps, its stand-in. */
class Stop {
  /** @param {Exercise[]} exercises the plan's own first */
  constructor(exercises) {
    this.exercises = exercises;
  }

  /** The one that is done today. */
  get now() {
    const [own, other] = this.exercises;
    if (!other) return own;
    const taken = own.records.some((one) => one.kind === "replaced" && one.exercise === own.id);
    return taken ? other : own;
  }

  get done() {
    return countOf(setsOf(this.now.records, this.now.id));
  }

  get planned() {
    return this.now.work?.sets.length ?? 0;
  }

  /** Something is left to do here. */
  get open() {
    return !this.now.leftOut && !this.now.next?.over;
  }

  get letter() {
    return this.exercises[0].work?.superset ?? "";
  }

  render() {
    for (const one of this.exercises) {
      const held = one.records.some((set) => set.kind === "set" && set.exercise === one.id);
      one.section.hidden = one !== this.now && !held;
      one.render(one !== this.now);
    }
  }
}

export class Walk {
  /**
   * @param {HTMLElement} meeting
   * @param {Exercise[]} exercises
   * @param {() => void} moved
   */
  constructor(meeting, exercises, moved) {
    this.meeting = meeting;
    this.moved = moved;
    const places = new Map();
    for (const one of exercises) {
      const at = one.section.dataset.place;
      places.set(at, [...(places.get(at) ?? []), one]);
    }
    this.stops = [...places.values()].map((own) => new Stop(own));
    this.at = 0;
    this.steps = /** @type {HTMLElement} */ (meeting.querySelector(".steps"));
    for (const button of meeting.querySelectorAll("[data-view]")) {
      button.addEventListener("click", () => this.look(button.getAttribute("data-view") ?? "one"));
    }
    for (const button of meeting.querySelectorAll("[data-walk]")) {
      button.addEventListener("click", () => this.go(this.at + Number(button.dataset.walk), true));
    }
    for (const part of meeting.querySelectorAll(".views, .steps")) part.hidden = false;
    this.view = localStorage.getItem(VIEW) ?? "one";
    this.stops.forEach((_, place) => this.steps.append(this.stepButton(place)));
    this.at = Math.max(this.stops.findIndex((one) => one.open), 0);
  }

  get current() {
    return this.stops[this.at]?.now;
  }

  /** @param {number} place */
  stepButton(place) {
    const item = document.createElement("li");
    const button = document.createElement("button");
    button.type = "button";
    // Until the first render, which waits for what this device remembers.
    button.textContent = `${place + 1}${this.stops[place].letter}`;
    button.addEventListener("click", () => this.go(place, true));
    item.append(button);
    return item;
  }

  /** @param {string} view */
  look(view) {
    this.view = view;
    localStorage.setItem(VIEW, view);
    this.render();
  }

  /** @param {number} place @param {boolean} asked by a press, so that the place gets the focus */
  go(place, asked) {
    this.at = Math.min(Math.max(place, 0), this.stops.length - 1);
    this.render();
    this.moved();
    if (!asked) return;
    const heading = this.current.section.querySelector("h2");
    heading.tabIndex = -1;
    heading.focus({ preventScroll: this.view === "one" });
    if (this.view === "one") this.steps.scrollIntoView({ block: "start" });
  }

  /** After a set: to the partner of a superset that has done less; else stay. */
  after(exercise) {
    const at = this.stops.findIndex((one) => one.exercises.includes(exercise));
    if (at < 0) return;
    const letter = this.stops[at].letter;
    const partners = this.stops
      .map((one, place) => ({ one, place }))
      .filter(({ one }) => letter !== "" && one.letter === letter && one.open);
    const least = partners.sort((a, b) => a.one.done - b.one.done || a.place - b.place)[0];
    this.at = least ? least.place : at;
    this.render();
    this.moved();
    if (this.current.next?.over) this.meeting.querySelector(".walk")?.scrollIntoView({ block: "nearest" });
    else this.current.show();
  }

  render() {
    const one = this.view === "one";
    this.meeting.classList.toggle("one-by-one", one);
    for (const button of this.meeting.querySelectorAll("[data-view]")) {
      button.setAttribute("aria-pressed", String(button.dataset.view === this.view));
    }
    this.stops.forEach((stop, place) => {
      stop.render();
      for (const each of stop.exercises) {
        each.section.classList.toggle("elsewhere", one && place !== this.at);
      }
      this.renderStep(stop, place);
    });
    const walk = /** @type {HTMLElement} */ (this.meeting.querySelector(".walk"));
    walk.hidden = !one;
    const [back, on] = walk.querySelectorAll("button");
    back.disabled = this.at === 0;
    on.disabled = this.at === this.stops.length - 1;
    on.classList.toggle("main", !this.stops[this.at]?.open && !on.disabled);
  }

  renderStep(stop, place) {
    const button = /** @type {HTMLElement} */ (this.steps.children[place].firstElementChild);
    const out = stop.now.leftOut || !stop.planned;
    const words = out ? "left out" : `${stop.done} of ${stop.planned} sets`;
    button.textContent = `${place + 1}${stop.letter}`;
    const count = document.createElement("span");
    count.textContent = out ? "–" : `${stop.done}/${stop.planned}`;
    button.append(count);
    button.setAttribute("aria-label", `${place + 1}${stop.letter} ${stop.now.work?.name}, ${words}`);
    if (place === this.at) button.setAttribute("aria-current", "step");
    else button.removeAttribute("aria-current");
    button.classList.toggle("over", !stop.open);
  }
}
