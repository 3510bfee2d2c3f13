/** Puts a part where the page has room for it, and leaves a reader where he was. */

import { PARTS } from "./made.js";
import { render } from "./parts.js";

/** What each place was last given. @type {WeakMap<Element, string>} */
const given = new WeakMap();

/**
 * Draw a part into a place. Where it is drawn already, by the server or from here, nothing is touched.
 * @param {Element} place
 * @param {string} part
 * @param {Map<string, any>} view
 */
export function draw(place, part, view) {
  const markup = render(PARTS, part, view);
  if (given.get(place) === markup) return;
  given.set(place, markup);
  const fresh = /** @type {Element} */ (place.cloneNode(false));
  fresh.innerHTML = markup;
  if (fresh.innerHTML === place.innerHTML) return;
  const keep = remember(place);
  place.replaceChildren(...fresh.childNodes);
  keep();
}

/** Note what is open and what has the focus; gives what brings that back. @param {Element} place @returns {() => void} */
function remember(place) {
  const open = [...place.querySelectorAll("details[open] > summary")].map((summary) => summary.textContent);
  const active = place.contains(document.activeElement) ? document.activeElement : null;
  return () => {
    for (const summary of place.querySelectorAll("details > summary")) {
      if (open.includes(summary.textContent)) summary.parentElement?.setAttribute("open", "");
    }
    if (active) likeness(place, active)?.focus();
  };
}

/** What stands now where an element stood that had the focus. @param {Element} place @param {Element} gone */
function likeness(place, gone) {
  const all = /** @type {NodeListOf<HTMLElement>} */ (place.querySelectorAll(gone.tagName));
  const names = ["id", "name", "value", "href"];
  return [...all].find((each) => names.every((name) => each.getAttribute(name) === gone.getAttribute(name)));
}
