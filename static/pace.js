/**
 * When to exchange with the server, and how that stands in words. A phone on a workshop's network is told
 * nothing when the server goes or comes back, so it asks: at every sign of life, and on a timer.
 */

import { noteFault } from "./errors.js";
import { stays, unsent } from "./local.js";
import { remember } from "./lost.js";
import { exchange } from "./sync.js";

const FIRST = 1_000; // milliseconds; doubled at each failure
const LAST = 30_000;
const SKEW = 5 * 60_000;
const STAYS = "This browser promises to keep what is here.";
const GOES = "This browser may clear what is here after some weeks without use: what is sent is safe.";

/** The other tabs of this phone. */
const tabs = new BroadcastChannel("shoulderline");

/** @type {{outcome: import("./sync.js").Outcome | "", running: boolean, again: boolean, wait: number,
 *   timer: number, skew: number, news: boolean, telling: number, waiting: ((outcome: string) => void)[],
 *   changed: (outcome: string, news: boolean, elsewhere?: boolean) => unknown}} */
const now = {
  outcome: "", running: false, again: false, wait: FIRST, timer: 0, skew: 0, news: false, telling: 0, waiting: [],
  changed: () => {},
};

/** @type {import("./sync.js").Ears} */
const ears = { skew: (ahead) => { now.skew = ahead; }, news: () => { now.news = true; } };

/**
 * Begin, and exchange at every sign of life.
 * @param {(outcome: string, news: boolean, elsewhere?: boolean) => unknown} changed called after each exchange, and when
 *   another tab kept something, with whether what this phone holds has changed, and whether from elsewhere
 */
export function begin(changed) {
  now.changed = changed;
  tabs.onmessage = () => { changed(now.outcome, true, true); tell(); };
  for (const sign of ["online", "focus", "pageshow"]) addEventListener(sign, () => soon());
  document.addEventListener("visibilitychange", () => !document.hidden && soon());
  soon();
}

/** What the last exchange came to, and how far this clock is ahead, once a server said. @returns {{outcome: import("./sync.js").Outcome | "", skew: number | undefined}} */
export function heard() {
  return { outcome: now.outcome, skew: now.outcome === "through" || now.skew ? now.skew : undefined };
}

/** Something was kept here: say so, in every tab, and then send it. */
export async function saved() {
  tabs.postMessage("saved");
  now.wait = FIRST;
  await tell();
  soon();
}

/** Exchange now, or again when the exchange that is under way is done. */
export async function soon() {
  now.again = now.running;
  if (now.running) return;
  now.running = true;
  clearTimeout(now.timer);
  now.news = false;
  now.outcome = await exchange(ears).catch(broken);
  now.running = false;
  await after();
}

/** A fault of this phone's own store is no reason to stop asking. @param {unknown} error @returns {"away"} */
function broken(error) {
  console.error(error);
  noteFault(error);
  return "away";
}

async function after() {
  if (now.news) tabs.postMessage("news");
  await now.changed(now.outcome, now.news);
  await tell();
  if (now.again) return soon();
  next();
  now.waiting.splice(0).forEach((resolve) => resolve(now.outcome));
}

/** How the exchanges that are under way come out, all of them. @returns {Promise<string>} */
export function settled() {
  return new Promise((resolve) => now.waiting.push(resolve));
}

/** Set the timer: a while when all is well, sooner and then ever later when not, each phone at its own moment. */
function next() {
  if (document.hidden) return;
  const wait = now.outcome === "through" ? LAST : now.wait;
  now.wait = now.outcome === "through" ? FIRST : Math.min(now.wait * 2, LAST);
  now.timer = window.setTimeout(soon, wait * (0.5 + Math.random() / 2));
}

/** Say how it stands, in the page's head. */
export async function tell() {
  const place = document.getElementById("state");
  if (!place) return;
  const mine = ++now.telling;
  const [all, kept] = await Promise.all([unsent(), stays()]);
  if (mine !== now.telling) return; // what was read since is newer
  if (all.length || now.outcome === "through") remember(all.length); // else nothing was ever kept here
  const refused = all.filter((each) => each.why).length;
  const said = words(now.outcome, all.length - refused, refused) + clock();
  if (place.textContent !== said) place.textContent = said;
  place.dataset.state = now.outcome;
  tellPair();
  tellStay(kept);
  document.dispatchEvent(new CustomEvent("unsent", { detail: all }));
}

/**
 * @param {string} outcome of the last exchange; nothing before the first
 * @param {number} waiting
 * @param {number} refused
 * @returns {string}
 */
export function words(outcome, waiting, refused) {
  const against = refused ? `, ${refused} refused` : "";
  if (outcome === "away") return `cannot reach the server, ${waiting || "nothing"} waiting${against}`;
  if (outcome === "unpaired") return `not paired with the shop's server, ${waiting || "nothing"} waiting${against}`;
  if (waiting) return `saved here, ${waiting} to send${against}`;
  if (outcome === "through") return refused ? `all else sent${against}` : "all sent";
  return refused ? `saved here${against}` : "";
}

/** Show the way to the pairing page while there is need of it. */
function tellPair() {
  const way = document.getElementById("pair");
  if (way) way.hidden = now.outcome !== "unpaired";
}

/** @returns {string} */
function clock() {
  const minutes = Math.round(Math.abs(now.skew) / 60_000);
  return Math.abs(now.skew) > SKEW ? `; this clock is ${minutes} minutes ${now.skew > 0 ? "ahead" : "behind"}` : "";
}

/** Say whether the browser may clear what is kept; nothing before it was asked. @param {boolean | undefined} kept */
function tellStay(kept) {
  const place = document.getElementById("stays");
  if (place && kept !== undefined) place.textContent = kept ? STAYS : GOES;
}
