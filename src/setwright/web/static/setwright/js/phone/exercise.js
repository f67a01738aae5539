/** One exercise on the page: what is asked, the form, what was logged. */

import { choose, complain, field, fill, newRecord, setFields, Wrong } from "./form.js";
import { lineItem, wordsFor } from "./lines.js";
import { figureOf, kgOf, recipeOf, stepped } from "./loads.js";
import { doubled, otherSide, setsOf, troubleOf } from "./state.js";

/** @typedef {import("./day.js").Day} Day */
/** @typedef {import("./types.js").LogRecord} LogRecord */

// So many lines leave room for the form below them.
const FEW_LINES = 2;
// A thumb that trembles is not another set.
const TWICE_MS = 700;

export class Exercise {
  /**
   * @param {HTMLElement} section
   * @param {Day} day
   * @param {"now"|"then"} which
   * @param {(exercise: Exercise) => void} logged
   */
  constructor(section, day, which, logged) {
    this.section = section;
    this.day = day;
    this.which = which;
    this.logged = logged;
    this.id = section.dataset.exercise ?? "";
    this.form = /** @type {HTMLFormElement} */ (section.querySelector("form.set"));
    /** @type {LogRecord|null} */
    this.changing = null;
    this.further = false;
    this.typed = false;
    this.filled = "";
    this.pressed = 0;
    /** @type {import("./types.js").Work|undefined} */
    this.known = undefined;
    this.idle = false;
    this.form.addEventListener("submit", (event) => this.submit(event));
    this.form.addEventListener("input", (event) => this.input(event));
    for (const button of this.form.querySelectorAll("button[data-for]")) {
      button.hidden = false;
      button.addEventListener("click", () => this.step(button));
    }
    this.find(".keep-old").addEventListener("click", () => this.reset());
    this.find(".again").addEventListener("click", () => {
      this.further = true;
      this.render();
    });
  }

  /** @returns {HTMLElement} */
  find(selector) {
    return /** @type {HTMLElement} */ (this.section.querySelector(selector));
  }

  /** As planned; as it last was, should the plan have changed under our hands. */
  get work() {
    this.known = this.day.work(this.id, this.which) ?? this.known;
    return this.known;
  }

  get records() {
    return this.day.counts(this.id, this.which) ? this.day.records : [];
  }

  get leftOut() {
    return this.records.some((one) => one.kind === "skipped" && one.exercise === this.id);
  }

  /** What is asked next. */
  get next() {
    return this.work ? this.day.next(this.work, this.which) : undefined;
  }

  /** @param {boolean} idle another one is done in its place */
  render(idle = this.idle) {
    this.idle = idle;
    const work = this.work;
    const next = this.next;
    if (!work || !next) return;
    this.renderLines(work);
    const stop = troubleOf(this.records, this.id, this.day.safety.symptoms).stop;
    const closed = (next.over || this.leftOut) && !this.further && !this.changing;
    this.form.hidden = closed || stop || (idle && !this.changing);
    const over = this.find("p.over");
    over.hidden = !next.over || this.leftOut || idle;
    over.textContent = next.because.join(" ");
    over.classList.toggle("wrong", stop);
    this.find(".again").hidden = !closed || stop || this.leftOut || idle;
    if (!this.changing) this.ask(work, next);
  }

  /** Bring the form with the lines above it under the thumb. */
  show() {
    const lines = this.find("ul.done");
    const many = lines.children.length > FEW_LINES;
    (many ? lines.lastElementChild : lines)?.scrollIntoView({ block: "start" });
  }

  renderLines(work) {
    const twice = doubled(this.records);
    const waits = new Set(this.day.waiting.map((one) => one.id));
    const own = this.records.filter((one) => (one.by ?? one.exercise) === this.id);
    const items = own.map((one) =>
      lineItem(
        {
          id: one.id,
          words: wordsFor(one, (id) => this.day.work(id), this.day.unit),
          twice: twice.has(one.id),
          waits: waits.has(one.id),
        },
        {
          change: one.kind === "set" ? () => this.change(work, one) : undefined,
          takeBack: () => this.day.takeBack(one.id),
        },
      ),
    );
    this.find("ul.done").replaceChildren(...items);
  }

  /** Say what is asked, and fill it in unless something is being typed. */
  ask(work, next) {
    const side = work.sides === "one" ? " a side" : "";
    const known = next.kg === null ? "load by feel, " : `${next.load} × `;
    const load = work.measured ? known : "";
    const most = next.most > next.reps && !next.failure ? ` to ${next.most}` : "";
    const effort = next.failure
      ? "as many as possible in good form"
      : `stop with ${Math.round(next.rir * 100) / 100} left`;
    const extra = next.over ? "Another set" : `Set ${next.number} of ${work.sets.length}`;
    this.find(".which").textContent = extra;
    this.find(".ask").textContent = next.over ? "" : `${load}${next.reps}${most}${side}, ${effort}`;
    this.find(".why").textContent = next.over ? "" : next.because.join(" ");
    this.find("button.log").textContent = next.over ? "Log it" : `Log set ${next.number}`;
    const last = setsOf(this.records, this.id).at(-1);
    const kg = next.over ? (last?.load_kg ?? null) : next.kg;
    const other = otherSide(setsOf(this.records, this.id));
    const key = [next.number, kg, next.reps, other].join(" ");
    if (!this.typed && key !== this.filled) {
      this.filled = key;
      if (kg !== null) field(this.form, "load", figureOf(kg, this.day.unit));
      if (next.reps) field(this.form, "reps", String(next.reps));
      field(this.form, "number", String(other ? last.number : next.number));
      choose(this.form, "side", other);
    }
    this.recipe();
  }

  recipe() {
    const load = this.form.elements.namedItem("load");
    if (!(load instanceof HTMLInputElement) || !this.work) return;
    const kg = kgOf(this.work, load.value, this.day.unit);
    this.find(".how").textContent = recipeOf(this.work, kg);
  }

  /** @param {Event} event */
  input(event) {
    this.typed = true;
    this.recipe();
    const target = event.target;
    if (target instanceof HTMLSelectElement && target.name === "pain_level") {
      this.advise(target.value ? this.painWords(Number(target.value)) : "");
    }
  }

  /** One step of the kit, or one repetition. @param {Element} button */
  step(button) {
    const name = button.getAttribute("data-for") ?? "";
    const way = button.classList.contains("more") ? 1 : -1;
    const input = this.form.elements.namedItem(name);
    if (!(input instanceof HTMLInputElement) || !this.work) return;
    if (name === "load") input.value = stepped(this.work, input.value, way);
    else input.value = String(Math.min(Math.max((parseInt(input.value, 10) || 0) + way, 0), 200));
    this.typed = true;
    this.recipe();
  }

  /** @param {SubmitEvent} event */
  async submit(event) {
    event.preventDefault();
    const work = this.work;
    if (!work || Date.now() - this.pressed < TWICE_MS) return;
    this.pressed = Date.now();
    try {
      const fields = setFields(this.form, work, this.day.unit);
      complain(this.form, "");
      await this.day.add(...this.recordsOf(work, fields));
      this.reset();
      this.section.querySelector(".warm")?.removeAttribute("open");
      this.advise(this.adviceAfter(fields));
      this.logged(this);
    } catch (error) {
      if (!(error instanceof Wrong)) throw error;
      complain(this.form, error.message);
      this.pressed = 0;
    }
  }

  recordsOf(work, fields) {
    const old = this.changing;
    if (!old) {
      const rest_s = fields.role === "working" ? this.day.restBefore(work, fields.reps) : undefined;
      return [newRecord("set", rest_s === undefined ? fields : { ...fields, rest_s })];
    }
    const { rest_s, symptoms } = old;
    const kept = Object.fromEntries(
      Object.entries({ rest_s, symptoms }).filter(([, value]) => value !== undefined),
    );
    return [
      newRecord("withdrawn", { of: old.id }),
      newRecord("set", { ...fields, ...kept, at: old.at }),
    ];
  }

  /** @param {LogRecord} set */
  change(work, set) {
    this.changing = set;
    this.typed = true;
    this.render();
    this.form.hidden = false;
    fill(this.form, set, figureOf(set.load_kg, this.day.unit));
    this.find(".which").textContent = `Change set ${set.number ?? ""}`;
    this.find(".ask").textContent = "";
    this.find(".why").textContent = "";
    this.find("button.log").textContent = "Save the change";
    this.find(".keep-old").hidden = false;
    this.recipe();
    this.form.querySelector("input[name=load], input[name=reps]")?.focus();
  }

  /** Back to the next set. */
  reset() {
    this.changing = null;
    this.further = false;
    this.typed = false;
    this.filled = "";
    for (const name of ["partial_reps", "note", "pain_level", "pain_where"]) field(this.form, name, "");
    field(this.form, "role", "working");
    choose(this.form, "rir", "");
    choose(this.form, "side", "");
    const technique = this.form.elements.namedItem("technique");
    if (technique instanceof HTMLInputElement) technique.checked = false;
    this.find(".further").removeAttribute("open");
    this.find(".keep-old").hidden = true;
    complain(this.form, "");
    this.render();
  }

  painWords(level) {
    return `Pain ${level} of 10: ${this.day.safety.pain[level]}. ${this.day.safety.pain_words}`;
  }

  adviceAfter(fields) {
    const words = fields.pain ? [this.painWords(fields.pain.level)] : [];
    const note = (fields.note ?? "").toLowerCase();
    if (this.day.safety.hints.some((hint) => note.includes(hint))) {
      words.push(
        "Does your note tell of a symptom that stops training? Then open “Something is wrong” below.",
      );
    }
    return words.join(" ");
  }

  /** @param {string} words */
  advise(words) {
    this.find(".advice").textContent = words;
  }
}
