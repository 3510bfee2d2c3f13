/** How this phone stands, in short lines that can be read out over a telephone. */

import { draw } from "./draw.js";
import { faults } from "./errors.js";
import { entries, standing, stays } from "./local.js";
import { ENGINE, STAMP } from "./made.js";
import { heard } from "./pace.js";

/** @typedef {[string, string]} Line its label and its words */

const place = /** @type {HTMLElement} */ (document.getElementById("standing"));
const SAID = {
  through: "answers, all is exchanged",
  unpaired: "answers, and does not know this phone: pair it again",
  away: "cannot be reached",
  busy: "another tab exchanges",
  "": "not asked yet",
};
const STEP = 5 * 60_000; // milliseconds of skew that are no trouble

/** A name made of digits and letters in fours, as one reads it out. @param {string} name */
const inFours = (name) => name.replaceAll("-", "").replace(/(.{4})(?=.)/g, "$1 ");

/** @param {number} count @param {string} noun @param {string} [many] */
const counted = (count, noun, many = `${noun}s`) => `${count} ${count === 1 ? noun : many}`;

/** @param {number | undefined} bytes */
const size = (bytes) => (bytes === undefined ? "not said" : `${(bytes / 1e6).toFixed(1)} MB`);

/** @returns {Promise<Line[]>} */
async function program() {
  const { outcome, skew } = heard();
  return [
    ["Build", inFours(STAMP)],
    ["Engine", inFours(ENGINE)],
    ["Server", SAID[outcome]],
    ["Clock", skew === undefined ? "not compared yet" : clock(skew)],
    ["Opens offline", await worker()],
    ["Page", isSecureContext ? "secure" : "not secure, so nothing works offline"],
  ];
}

/** @param {number} skew @returns {string} */
function clock(skew) {
  const seconds = Math.round(Math.abs(skew) / 1000);
  const said = seconds < 120 ? counted(seconds, "second") : counted(Math.round(seconds / 60), "minute");
  const side = `${said} ${skew > 0 ? "ahead of" : "behind"} the server`;
  return Math.abs(skew) > STEP ? `wrong, ${side}` : `good, ${side}`;
}

/** @returns {Promise<string>} */
async function worker() {
  if (!navigator.serviceWorker) return "no, this page has no worker";
  const registration = await navigator.serviceWorker.getRegistration();
  if (!registration) return "no, the worker is not registered";
  const version = registration.waiting ? "; a new version waits" : "";
  if (!navigator.serviceWorker.controller) return `not yet, the worker does not answer this page${version}`;
  return (await caches.match("/shell/home")) ? `yes${version}` : `no, its files are gone${version}`;
}

/** @returns {Promise<Line[]>} */
async function store() {
  const [{ epoch, unsent }, held, kept] = await Promise.all([standing(), entries(), stays()]);
  const refused = unsent.filter((each) => each.why).length;
  const room = await navigator.storage?.estimate?.();
  return [
    ["Server's data", epoch ? inFours(epoch) : "none seen yet"],
    ["Held here", counted(held.length, "entry", "entries")],
    ["Waiting to be sent", counted(unsent.length - refused, "entry", "entries")],
    ["Refused", counted(refused, "entry", "entries")],
    ["Room", room ? `${size(room.usage)} used of ${size(room.quota)}` : "this browser does not say"],
    ["Kept for good", kept === undefined ? "no answer yet" : kept ? "yes, the browser promised" : "no, the browser may clear it"],
  ];
}

/** The browser by its name and number; all that it says of itself where that is not found. @returns {Line[]} */
function browser() {
  const found = ["Firefox", "Edg", "Chrome", "Version"].map((name) => new RegExp(`${name}/\\d+`).exec(navigator.userAgent)?.[0]);
  const named = found.find(Boolean)?.replace("/", " ").replace("Version", "Safari");
  const system = /\(([^;)]*)/.exec(navigator.userAgent)?.[1] ?? "";
  return [
    ["Browser", named ? `${named}, ${system}` : navigator.userAgent],
    ["Screen", `${innerWidth} by ${innerHeight}`],
  ];
}

/** @param {Line[]} lines */
const rows = (lines) => lines.map(([label, words]) => new Map([["label", label], ["words", words]]));

/** Draw it; what cannot be read is said, since that is what one looks here for. */
async function show() {
  /** @type {Line[]} */
  const failed = [["This phone's store", "cannot be read"]];
  const [first, second] = await Promise.all([program(), store().catch(() => failed)]);
  const last = faults().map(({ at, said }) => /** @type {Line} */ ([at.slice(0, 16).replace("T", " "), said]));
  draw(place, "standing_here", new Map([["rows", rows([...first, ...second, ...browser()])], ["errors", rows(last)]]));
}

document.addEventListener("unsent", show); // said after every exchange
show();
