/**
 * Served in the worker's place when a version that is broken has to leave the phones: it lets go of its files and of
 * itself, and answers nothing. Pages come from the server from then on. What the phone keeps lies in IndexedDB and is
 * not touched; open pages are left alone, so that nothing half typed goes.
 */
"use strict";

/** @type {any} */
const worker = self;
const PREFIX = "shoulderline-";

async function leave() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX)).map((name) => caches.delete(name)));
  await worker.registration.unregister();
}

worker.addEventListener("install", () => worker.skipWaiting());
worker.addEventListener("activate", (/** @type {any} */ event) => event.waitUntil(leave()));
