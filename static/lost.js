/**
 * What a browser cleared is noticed: a mark in another of its stores says that something was kept here, and how much
 * of it was not sent. Where the browser clears both, nothing can tell; and what was sent comes back all the same.
 */

import { noteFault } from "./errors.js";
import { standing } from "./local.js";

const NAME = "shoulderline-held";
const COMES = "all that was sent comes back from the server.";

/** Write down that this phone keeps something, and how much waits. @param {number} waiting */
export function remember(waiting) {
  try {
    if (localStorage.getItem(NAME) !== String(waiting)) localStorage.setItem(NAME, String(waiting));
  } catch {
    // storage is full or switched off: nothing can be noticed then
  }
}

/** Say it where what was kept is gone: the mark is there, and the store says that nothing was ever kept. */
export async function noticeLost() {
  const mark = marked(); // before this page writes one
  const place = document.getElementById("lost");
  if (mark === null || !place) return;
  const { epoch, unsent } = await standing();
  if (epoch || unsent.length) return;
  noteFault(new DOMException("what was kept is gone", "DataError"));
  place.textContent = `This browser cleared what was kept here. ${gone(Number(mark))}`;
}

/** @returns {string | null} */
function marked() {
  try {
    return localStorage.getItem(NAME);
  } catch {
    return null;
  }
}

/** @param {number} waiting @returns {string} */
function gone(waiting) {
  if (!waiting) return `Nothing waited to be sent: ${COMES}`;
  return `${waiting === 1 ? "One entry was" : `${waiting} entries were`} not sent yet and must be made again; ${COMES}`;
}
