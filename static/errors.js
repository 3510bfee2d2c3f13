/**
 * The last errors of this phone's pages: their kind, where they came up and when, for someone who helps. Never their
 * words: those may quote what was typed.
 * @typedef {{at: string, said: string}} Fault
 */

const NAME = "shoulderline-errors";
const MOST = 20;
/** Where in a script: the first such place in a stack is where it came up. */
const PLACE = /([\w.-]+\.js)[^:\s]*:(\d+):(\d+)/;

/** Newest first; none where storage is switched off. @returns {Fault[]} */
export function faults() {
  try {
    const held = JSON.parse(localStorage.getItem(NAME) ?? "[]");
    return Array.isArray(held) ? held.filter((each) => typeof each?.at === "string" && typeof each.said === "string") : [];
  } catch {
    return [];
  }
}

/** Write an error down. @param {unknown} error @param {string} [place] where no stack says it */
export function noteFault(error, place = "") {
  const said = `${error instanceof Error || error instanceof DOMException ? error.name : typeof error}${placeOf(error, place)}`;
  try {
    localStorage.setItem(NAME, JSON.stringify([{ at: new Date().toISOString(), said }, ...faults()].slice(0, MOST)));
  } catch {
    // storage is full or switched off: the page goes on without
  }
}

/** The stack without the error's words, which Chromium alone begins it with. @param {Error} error @returns {string} */
function placesOf({ stack = "", message }) {
  const said = message ? stack.indexOf(`: ${message}`) : -1;
  return said < 0 ? stack : stack.slice(said + 2 + message.length);
}

/** @param {unknown} error @param {string} place @returns {string} */
function placeOf(error, place) {
  const found = PLACE.exec(error instanceof Error ? placesOf(error) || place : place);
  return found ? ` at ${found[1]} line ${found[2]} column ${found[3]}` : "";
}

addEventListener("error", (event) => noteFault(event.error, `${event.filename}:${event.lineno}:${event.colno}`));
addEventListener("unhandledrejection", (event) => noteFault(event.reason));
