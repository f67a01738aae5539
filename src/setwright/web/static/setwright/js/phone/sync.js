/** When to send, and saying in words how it stands. */

import { sendWaiting } from "./send.js";

/** @typedef {import("./day.js").Day} Day */
/** @typedef {import("./send.js").Outcome} Outcome */

const SOONEST_MS = 4000;
const LATEST_MS = 300_000;

export class Sync {
  /** @param {Day} day @param {(ids: string[]) => void} arrived */
  constructor(day, arrived) {
    this.day = day;
    this.arrived = arrived;
    /** @type {Outcome} */
    this.outcome = "sent";
    this.sending = false;
    this.wait = SOONEST_MS;
    this.timer = 0;
    this.place = document.getElementById("sync");
    addEventListener("online", () => this.send());
    addEventListener("offline", () => this.say());
    document.addEventListener("visibilitychange", () => {
      if (!document.hidden) this.send();
    });
  }

  /** Send what waits, one sender at a time among tabs. */
  async send() {
    clearTimeout(this.timer);
    if (this.sending) return;
    if (!this.day.waiting.length) {
      this.say();
      return;
    }
    this.sending = true;
    this.say();
    try {
      const { outcome, ids } = await this.alone(() => sendWaiting(this.day.kept));
      this.outcome = outcome;
      await this.day.reload();
      if (ids.length) this.arrived(ids);
    } finally {
      this.sending = false;
      this.say();
    }
    this.plan();
  }

  /** @template T @param {() => Promise<T>} act @returns {Promise<T>} */
  alone(act) {
    return navigator.locks ? navigator.locks.request("setwright-send", act) : act();
  }

  /** Try again later, longer each time, while something waits; and when the phone wakes us. */
  plan() {
    if (!this.day.waiting.length) {
      this.wait = SOONEST_MS;
      return;
    }
    this.timer = setTimeout(() => this.send(), this.outcome === "sent" ? 0 : this.wait);
    this.wait = Math.min(this.wait * 2, LATEST_MS);
    navigator.serviceWorker?.ready
      .then((worker) => /** @type {any} */ (worker).sync?.register("records"))
      .catch(() => {});
  }

  say() {
    if (this.place && this.place.textContent !== this.words) this.place.textContent = this.words;
  }

  get words() {
    const waiting = this.day.waiting;
    const refused = this.day.refused.length;
    const also = refused ? ` ${refused} not taken, see below.` : "";
    if (!waiting.length) return (navigator.onLine ? "All sent." : "No network. All sent.") + also;
    const one = waiting.length === 1;
    const what = waiting.every((each) => each.record.kind === "set") ? "set" : "entr";
    const plural = what === "set" ? (one ? "" : "s") : one ? "y" : "ies";
    const count = `${waiting.length} ${what}${plural}`;
    const verb = one ? "waits" : "wait";
    if (this.sending) return `Sending ${count} …${also}`;
    if (this.outcome === "signed out") {
      return `Signed out. ${count} ${verb} on this phone: ask your coach for a new link.${also}`;
    }
    if (this.outcome === "another person") {
      return `Somebody else is signed in. ${count} ${verb} on this phone.${also}`;
    }
    if (this.outcome === "failed") return `The workspace does not answer. ${count} ${verb}.${also}`;
    return `${count} ${verb} for a network.${also}`;
  }
}
