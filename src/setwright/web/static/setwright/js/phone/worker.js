/** The service worker: the page and its files without a network, and sending in the background. */

import { dateOf } from "./clock.js";
import { sendWaiting } from "./send.js";
import { lastDay } from "./store.js";

const PAGE = "setwright-page";
const FILES = "setwright-files-";
const ADDRESS = "/today";
// A network slower than this is not waited for when today's page is at hand.
const PATIENCE_MS = 250;
// For a page of another day it is worth waiting.
const LONG_PATIENCE_MS = 4000;

/** @param {ServiceWorkerGlobalScope} scope @param {string[]} files addresses to keep */
export function begin(scope, files) {
  const store = FILES + nameOf(files);
  scope.addEventListener("install", (event) => event.waitUntil(install(scope, store, files)));
  scope.addEventListener("activate", (event) => event.waitUntil(activate(scope, store)));
  scope.addEventListener("fetch", (event) => {
    const { request } = event;
    const address = new URL(request.url);
    if (request.method !== "GET" || address.origin !== scope.location.origin) return;
    if (request.mode === "navigate" && address.pathname === ADDRESS) {
      event.respondWith(pageFor(event, address));
    } else if (files.includes(address.pathname + address.search)) {
      event.respondWith(fileFor(store, request));
    }
  });
  scope.addEventListener("sync", (event) => event.waitUntil(sendAll(scope)));
  scope.addEventListener("notificationclick", (event) => {
    event.notification.close();
    event.waitUntil(show(scope));
  });
}

/** A short name that changes when the files do. @param {string[]} files */
function nameOf(files) {
  let sum = 0;
  for (const letter of files.join("\n")) sum = (Math.imul(sum, 31) + letter.charCodeAt(0)) >>> 0;
  return sum.toString(36);
}

async function install(scope, store, files) {
  const kept = await caches.open(store);
  await kept.addAll(files.map((file) => new Request(file, { cache: "reload" })));
  const response = await fetch(ADDRESS, { redirect: "manual" }).catch(() => null);
  if (response?.ok) await (await caches.open(PAGE)).put(ADDRESS, response);
  await scope.skipWaiting();
}

async function activate(scope, store) {
  const old = (await caches.keys()).filter((name) => name.startsWith(FILES) && name !== store);
  await Promise.all(old.map((name) => caches.delete(name)));
  await scope.clients.claim();
}

async function fileFor(store, request) {
  return (await (await caches.open(store)).match(request)) ?? fetch(request);
}

/** Today's page: from the network when it is quick, else as it was kept. */
async function pageFor(event, address) {
  const kept = await caches.open(PAGE);
  if (address.searchParams.has("joined")) await kept.delete(ADDRESS);
  const held = await kept.match(ADDRESS);
  const fresh = fetchPage(event.request, kept);
  event.waitUntil(fresh.catch(() => {}));
  if (!held) return fresh;
  const today = held.headers.get("X-Day") === dateOf(new Date());
  const patience = today && !address.search ? PATIENCE_MS : LONG_PATIENCE_MS;
  const late = new Promise((done) => setTimeout(done, patience, null));
  const first = await Promise.race([fresh.catch(() => null), late]);
  return first && first.status < 500 ? first : held;
}

/** What the network says is kept, or, when it is no page of this person any more, forgotten. */
async function fetchPage(request, kept) {
  const response = await fetch(request);
  if (response.ok) await kept.put(ADDRESS, response.clone());
  else if (response.status < 500) await kept.delete(ADDRESS);
  return response;
}

async function sendAll(scope) {
  const day = await lastDay();
  if (!day) return;
  const { outcome } = await sendWaiting(day);
  new BroadcastChannel("setwright-phone").postMessage("changed");
  // The browser tries again later when this fails.
  if (outcome === "offline" || outcome === "failed") throw new Error(outcome);
}

async function show(scope) {
  const [open] = await scope.clients.matchAll({ type: "window" });
  return open ? open.focus() : scope.clients.openWindow(ADDRESS);
}
