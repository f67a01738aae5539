/** Sending records; one leaves the queue only when the server has answered for it. */

import { keep, keepDay, recordsOf } from "./store.js";

/** @typedef {import("./types.js").KeptDay} KeptDay */
/** @typedef {"sent"|"offline"|"signed out"|"another person"|"failed"} Outcome */

const BATCH = 100;
const WAIT_MS = 20_000;

/**
 * Send what waits, oldest first. Sending twice is harmless: the server keeps a record once.
 * @param {KeptDay} day
 * @returns {Promise<{outcome: Outcome, ids: string[]}>} ids that arrived
 */
export async function sendWaiting(day) {
  /** @type {string[]} */
  const ids = [];
  for (;;) {
    const waiting = (await recordsOf(day.person)).filter((one) => one.state === "waiting");
    if (!waiting.length) return { outcome: "sent", ids };
    const batch = waiting.slice(0, BATCH);
    const answer = await post(day, batch.map((one) => one.record));
    if (typeof answer === "string") return { outcome: answer, ids };
    const held = new Set([...answer.accepted, ...answer.known]);
    const refused = new Map(answer.refused.map((one) => [one.id, one.why]));
    const settled = batch.filter((one) => held.has(one.id) || refused.has(one.id));
    if (!settled.length) return { outcome: "failed", ids };
    for (const one of settled) {
      one.state = held.has(one.id) ? "sent" : "refused";
      one.why = refused.get(one.id) ?? [];
      if (one.state === "sent") ids.push(one.id);
    }
    await keep(settled);
  }
}

/**
 * @param {KeptDay} day
 * @param {object[]} records
 * @returns {Promise<Outcome|{accepted: string[], known: string[],
 *   refused: {id: string, why: string[]}[]}>}
 */
async function post(day, records, again = true) {
  /** @type {Response} */
  let response;
  try {
    response = await fetch(day.sync, {
      method: "POST",
      headers: { "Content-Type": "application/json", "X-CSRFToken": day.csrf },
      body: JSON.stringify({ person: day.person, records }),
      redirect: "manual",
      signal: AbortSignal.timeout(WAIT_MS),
    });
    if (response.ok) return await response.json();
  } catch {
    return "offline";
  }
  if (response.type === "opaqueredirect" || response.status === 404) return "signed out";
  if (response.status === 409) return "another person";
  if (response.status === 403 && again) {
    const fresh = await ask(day.source);
    if (typeof fresh === "string") return fresh;
    if (fresh.person !== day.person) return "another person";
    day.csrf = fresh.csrf;
    await keepDay(day);
    return post(day, records, false);
  }
  return "failed";
}

/**
 * Ask for data of the person who is signed in.
 * @param {string} address
 * @returns {Promise<Outcome|any>} the data, or what went wrong in a word
 */
export async function ask(address) {
  try {
    const response = await fetch(address, {
      redirect: "manual",
      cache: "no-store",
      signal: AbortSignal.timeout(WAIT_MS),
    });
    if (response.type === "opaqueredirect") return "signed out";
    return response.ok ? await response.json() : "failed";
  } catch {
    return "offline";
  }
}
