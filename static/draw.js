/** Puts a part where the page has room for it, and leaves a reader where he was. */

import { PARTS } from "./made.js";
import { render } from "./parts.js";

/** How long the keys rest before what stands below the answer is drawn anew, in milliseconds. */
const REST = 150;
let resting = 0;

/** What each place was last given. @type {WeakMap<Element, string>} */
const given = new WeakMap();

/**
 * Draw a part into a place. Where it is drawn already, by the server or from here, nothing is touched.
 * @param {Element} place
 * @param {string} part
 * @param {Map<string, any>} view
 */
export function draw(place, part, view) {
  clearTimeout(resting);
  const markup = render(PARTS, part, view);
  if (given.get(place) === markup) return;
  const fresh = filled(place, markup);
  const drawn = !given.has(place) && fresh.innerHTML === place.innerHTML;
  given.set(place, markup);
  if (drawn) return;
  const keep = remember(place);
  place.replaceChildren(...fresh.childNodes);
  keep();
}

/**
 * Draw while keys are pressed: the answer at once, what stands below it when the keys rest. The part's answer is a
 * part of its own, and the first element of the place.
 * @param {Element} place
 * @param {string} part
 * @param {Map<string, any>} view
 */
export function drawQuickly(place, part, view) {
  const answer = place.firstElementChild;
  if (!answer) return draw(place, part, view);
  clearTimeout(resting);
  resting = window.setTimeout(() => draw(place, part, view), REST);
  given.set(place, "");
  answer.replaceWith(...filled(place, render(PARTS, `${part}_answer`, view)).childNodes);
}

/**
 * Draw the answer into a place that is still empty; resolves when it can have been seen, at the latest after a while.
 * @param {Element} place
 * @param {string} part
 * @param {Map<string, any>} view
 */
export async function drawAnswer(place, part, view) {
  place.replaceChildren(...filled(place, render(PARTS, `${part}_answer`, view)).childNodes);
  await new Promise((done) => {
    requestAnimationFrame(() => setTimeout(done));
    setTimeout(done, REST); // a page in the background has no frames
  });
}

/** @param {Element} place @param {string} markup @returns {Element} an element like the place with the markup in it */
function filled(place, markup) {
  const fresh = /** @type {Element} */ (place.cloneNode(false));
  fresh.innerHTML = markup;
  return fresh;
}

/** Note what is open and what has the focus; gives what brings that back. @param {Element} place @returns {() => void} */
function remember(place) {
  const open = [...place.querySelectorAll("details[open] > summary")].map(nameOf);
  const active = place.contains(document.activeElement) ? document.activeElement : null;
  return () => {
    for (const summary of place.querySelectorAll("details > summary")) {
      if (open.includes(nameOf(summary))) summary.parentElement?.setAttribute("open", "");
    }
    if (active) likeness(place, active)?.focus();
  };
}

/** What opens is known by its id, since what it says may change, or by what it says. @param {Element} summary */
function nameOf(summary) {
  return summary.parentElement?.id || summary.textContent;
}

/** What stands now where an element stood that had the focus. @param {Element} place @param {Element} gone */
function likeness(place, gone) {
  const all = /** @type {NodeListOf<HTMLElement>} */ (place.querySelectorAll(gone.tagName));
  const names = ["id", "name", "value", "href"];
  return [...all].find((each) => names.every((name) => each.getAttribute(name) === gone.getAttribute(name)));
}
