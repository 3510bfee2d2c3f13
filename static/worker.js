/**
 * Keeps all files and shells of one version, and answers from them whether there is a signal or not. A classic
 * script: the server puts `self.kept` in front of it, with the stamp, the files and the patterns of addresses.
 */
"use strict";

/** @type {any} */
const worker = self;
/** @type {{stamp: string, files: string[], patterns: [string, string][]}} */
const kept = worker.kept;
const PREFIX = "shoulderline-";
const CACHE = PREFIX + kept.stamp;
const FILES = new Set(kept.files);
/** @type {[RegExp, string][]} */
const SHELLS = kept.patterns.map(([pattern, shell]) => [new RegExp(pattern), shell]);

/** All files of this version, or none: the version before goes on working then. */
async function keepAll() {
  const answers = await Promise.all(kept.files.map(fetched));
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(kept.files.map((file, at) => cache.put(file, answers[at])));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

/** @param {string} file @returns {Promise<Response>} */
async function fetched(file) {
  const answer = await fetch(file, { credentials: "same-origin" });
  const stamp = answer.headers.get("Shoulderline-Stamp");
  if (answer.status === 200 && !answer.redirected && stamp === kept.stamp) return answer;
  throw new Error(`${file}: ${answer.status}, ${answer.redirected ? "sent elsewhere" : "stamp"} ${stamp}`);
}

/** Other versions go once this one is in charge; a page of theirs has its modules loaded already. */
async function clearOthers() {
  const names = await caches.keys();
  const others = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(others.map((name) => caches.delete(name)));
  await worker.clients.claim();
}

/** What is kept; the network where the browser cleared the cache. @param {string} file @returns {Promise<Response>} */
async function fromCache(file) {
  const cache = await caches.open(CACHE);
  return (await cache.match(file)) ?? fetch(file);
}

/** What a request is answered with; nothing for what belongs to the network. @param {Request} request @returns {string | undefined} */
function fileFor(request) {
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== worker.location.origin) return undefined;
  if (request.mode === "navigate") return SHELLS.find(([pattern]) => pattern.test(pathname))?.[1];
  return FILES.has(pathname) ? pathname : undefined;
}

worker.addEventListener("install", (/** @type {any} */ event) => event.waitUntil(keepAll()));
worker.addEventListener("activate", (/** @type {any} */ event) => event.waitUntil(clearOthers()));
worker.addEventListener("message", (/** @type {any} */ event) => {
  if (event.data === "take over") worker.skipWaiting();
});
worker.addEventListener("fetch", (/** @type {any} */ event) => {
  const file = fileFor(event.request);
  if (file) event.respondWith(fromCache(file));
});
