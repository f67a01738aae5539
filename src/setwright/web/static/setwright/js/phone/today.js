/** The page of the day: wakes what stands on it. */

import { offerBell, ring } from "./bell.js";
import { renderBesides, watchForms } from "./besides.js";
import { dateOf, tellZone } from "./clock.js";
import { Day } from "./day.js";
import { Exercise } from "./exercise.js";
import { Finish } from "./finish.js";
import { watchLeaving } from "./leave.js";
import { keepsPages } from "./pages.js";
import { Rest } from "./rest.js";
import { ask } from "./send.js";
import { setsOf } from "./state.js";
import { dayOf, forgetPeople, keepDay } from "./store.js";
import { watchStop } from "./stop.js";
import { Sync } from "./sync.js";
import { Walk } from "./walk.js";

/** @typedef {import("./types.js").KeptDay} KeptDay */

const page = document.body.dataset;
const FRESH = `${page.scope}?fresh=1`;
const RENEWED = "setwright-renewed";
const PAUSE_MS = 60_000;

/** Show the page as the server has it now; not again and again should the network be slow. */
function renewPage() {
  const last = Number(sessionStorage.getItem(RENEWED) ?? 0);
  if (Date.now() - last < PAUSE_MS) return;
  sessionStorage.setItem(RENEWED, String(Date.now()));
  location.replace(FRESH);
}

/** Ask the server for the day. @returns {Promise<KeptDay|string>} or what went wrong */
async function fetchDay() {
  const found = await ask(page.document ?? "");
  if (typeof found === "string") return found;
  return { ...found, sync: page.sync, source: page.document };
}

/** Another one is signed in, or nobody: nothing of this person may stay in sight. */
async function leave() {
  await forgetPeople();
  await globalThis.caches?.delete("setwright-page");
  location.replace(FRESH);
}

/** Whether what is shown is still what is planned. @param {KeptDay} kept */
function planned(kept) {
  const { now, then } = kept.document;
  const versions = [now?.version, then?.version];
  const [first] = document.querySelectorAll(".meeting");
  return !first || versions.includes(first.dataset.version);
}

/** @param {Day} day */
function wake(day) {
  /** @type {Walk[]} */
  const walks = [];
  let active = 0;
  const bar = new Rest(() => walks[active]?.current, ring);
  document.querySelectorAll(".meeting").forEach((meeting, place) => {
    const which = meeting.dataset.which === "then" ? "then" : "now";
    const use = () => {
      active = place;
      bar.show();
    };
    const exercises = [...meeting.querySelectorAll(".work")].map(
      (section) => new Exercise(section, day, which, (one) => walks[place].after(one)),
    );
    walks.push(new Walk(meeting, exercises, use));
  });
  const ends = walks.map((walk) => new Finish(walk, day));
  const render = () => {
    walks.forEach((walk) => walk.render());
    ends.forEach((end) => end.render());
    renderBesides(day);
    bar.show();
  };
  const sync = new Sync(day, (ids) => arrived(day, ids, render));
  day.listeners.add(render);
  day.listeners.add(() => sync.say());
  const adding = day.add.bind(day);
  day.add = async (...records) => {
    await adding(...records);
    sync.send();
  };
  watchForms(day);
  watchStop(day, (exercise) => {
    const last = setsOf(day.records, exercise).at(-1);
    return last?.load_kg ?? day.work(exercise)?.sets[0]?.kg ?? 0;
  });
  watchLeaving(day, sync);
  return { render, sync };
}

/** Sets have arrived: ask what comes next, now that they count. */
async function arrived(day, ids, render) {
  const records = day.onPhone.filter((one) => ids.includes(one.id)).map((one) => one.record);
  if (records.some((one) => one.kind === "missed")) return renewPage();
  const exercises = new Set(records.filter((one) => one.kind === "set").map((one) => one.exercise));
  for (const exercise of exercises) {
    const found = await ask(`${page.next}?exercise=${encodeURIComponent(exercise)}`);
    if (typeof found === "string") continue;
    const counted = day.records.filter((one) => found.records.includes(one.id));
    day.tell(exercise, found.first, counted);
    const others = (day.kept.tables[exercise] ?? []).filter((row) => row[1] !== found.rows[0]?.[1]);
    if (found.rows.length) day.kept.tables[exercise] = [...others, ...found.rows];
  }
  if (exercises.size) render();
}

/** Take in the newest from the server. @param {Day} day */
async function refresh(day) {
  const asked = Date.now();
  const kept = await fetchDay();
  if (kept === "signed out" && !day.waiting.length) return leave();
  if (typeof kept === "string") return;
  if (kept.person !== day.person) return leave();
  if (!kept.document) return;
  if (kept.document.symptoms.length || kept.document.day !== page.day) {
    await day.renew(kept, asked);
    return renewPage();
  }
  await day.renew(kept, asked);
  const newer = document.getElementById("newer");
  if (newer) newer.hidden = planned(kept);
}

/** Say so when the page is from another day. */
function sayStale() {
  const today = dateOf(new Date());
  const stale = document.getElementById("stale");
  if (!stale || page.day === today) return;
  stale.hidden = false;
  stale.textContent = `This page is from ${page.day}. It is renewed as soon as there is a network.`;
  const then = document.querySelector("#then .meeting");
  if (then instanceof HTMLElement && then.dataset.day === today) {
    document.getElementById("then")?.setAttribute("open", "");
  }
}

/** The day as the page itself tells it. @returns {KeptDay|null} */
function dayOnPage() {
  const told = JSON.parse(document.getElementById("day")?.textContent ?? "null");
  if (!told) return null;
  const csrf = document.querySelector("meta[name=csrf]")?.getAttribute("content") ?? "";
  const { person, sync, document: source } = page;
  return { person, csrf, sync, source, document: told, tables: {} };
}

/** The newest this phone knows: kept from the last answer, if it is of the same plan. */
async function known() {
  const onPage = dayOnPage();
  const held = onPage && (await dayOf(onPage.person));
  if (held && planned(held)) return held;
  if (onPage) await keepDay(onPage);
  return onPage;
}

async function start() {
  tellZone();
  if (location.search) history.replaceState(null, "", page.scope);
  document.querySelector("#newer button")?.addEventListener("click", () => location.replace(FRESH));
  sayStale();
  const kept = await known();
  if (!kept || document.querySelector(".stopped")) {
    keepsPages(page);
    return;
  }
  const day = new Day(kept);
  const { render, sync } = wake(day);
  await day.reload();
  render();
  document.documentElement.classList.add("awake");
  offerBell();
  sync.send();
  addEventListener("online", () => refresh(day));
  document.addEventListener("visibilitychange", () => {
    if (!document.hidden) refresh(day);
  });
  await refresh(day);
  keepsPages(page);
}

start();
