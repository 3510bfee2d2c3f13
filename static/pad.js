/**
 * The pad for thumbs: it opens under a field for a length, several, a size or a count, and types into it.
 * Whoever has keys types as ever; Escape closes the pad.
 */
import { label, label_parts } from "./faces.js";
import { back, lean, put } from "./keys.js";
import { placeHeld } from "./place.js";
import { in_words, kind_of, nudged, setting_of } from "./value.js";

/** @typedef {HTMLInputElement} Input */

const FIELDS = '[data-kind="length"], [data-kind="widths"], [data-kind="count"], [data-kind="pair"]';
const LIFTED = 150; // ms after a finger was lifted until no press can come of it: touch gives focus before its click
const QUIET = 400; // ms without a press before the value is said

const page = document.documentElement;
const pad = /** @type {HTMLElement} */ (document.getElementById("pad"));
const heard = /** @type {HTMLElement} */ (document.getElementById("said"));
const again = /** @type {HTMLElement} */ (document.getElementById("pad-back"));

/** The field that is typed into, while the pad is open. @type {Input | null} */
let field = null;
let pane = "digits";
let resting = 0;
let lifting = 0;
let pressed = false; // a finger is down: closing now would move what it is about to press
let fresh = false; // the field was only just entered

/** @param {EventTarget | null} target @returns {target is Input} */
const padded = (target) => target instanceof HTMLInputElement && target.matches(FIELDS);

/** @param {string} selector @returns {HTMLElement[]} */
const in_pad = (selector) => [.../** @type {NodeListOf<HTMLElement>} */ (pad.querySelectorAll(selector))];

// Which keys are there.

/** @param {string} when @param {Set<string>} now @returns {boolean} */
const holds = (when, now) => when.split(" ").every((words) => words.split("|").some((word) => now.has(word)));

/** @param {Input} input @param {string} name */
function show(input, name) {
  pane = name;
  const how = setting_of(input);
  const now = new Set([how.unit, how.graduation.replace(" ", ""), kind_of(input), pane]);
  if (pane !== "more") now.add("typing");
  for (const part of in_pad("[data-when]")) part.hidden = !holds(part.dataset.when ?? "", now);
  for (const key of in_pad("[data-of]")) label_parts(key, pane);
  for (const key of in_pad('[data-do="more"]')) label(key, pane === "more" ? "digits" : "more", pane === "more");
  for (const key of in_pad('[data-do="next"]')) key.textContent = input.dataset.next ?? (following(input) || input.closest(".rows") ? "next" : "done");
}

/** @param {Input} input @param {string} of */
function turn(input, of) {
  const after = pane === "64" && of === "64" ? "upper" : "digits";
  const on = pane === of || (pane === "upper" && of === "64");
  show(input, on ? after : of);
}

// Opening, closing, and the way on.

/** @param {Input} input */
function open(input) {
  if (!again.hidden) return;
  field?.form?.classList.remove("typing");
  field = input;
  input.inputMode = "none";
  input.form?.classList.add("typing");
  document.body.classList.add("typing");
  pad.hidden = false;
  show(input, "digits");
  say_later();
  input.closest(".entry, .field")?.scrollIntoView({ block: "nearest" });
}

function close() {
  const settle = placeHeld(field);
  field?.form?.classList.remove("typing");
  field = null;
  document.body.classList.remove("typing");
  pad.hidden = true;
  heard.textContent = "";
  // The page lies otherwise now: what a key has led to may be behind what keeps to an edge.
  if (document.activeElement?.matches(":focus-visible")) document.activeElement.scrollIntoView({ block: "nearest" });
  settle();
}

/** @param {Input} input @returns {Input | undefined} */
function following(input) {
  const fields = [...(input.form?.elements ?? [])].filter(padded);
  return fields.slice(fields.indexOf(input) + 1).find((next) => !next.disabled && next.getClientRects().length > 0);
}

/** A list of rows may have a way on of its own. @param {Input} input */
function go_on(input) {
  if (!input.dispatchEvent(new CustomEvent("onward", { bubbles: true, cancelable: true }))) return;
  const next = following(input);
  if (next) {
    next.inputMode = "none";
    next.focus();
    next.select();
  } else {
    leave_field(input);
  }
}

/** @param {Input} input */
function leave_field(input) {
  input.blur();
  close();
}

// Typing.

/** @param {Input} input @param {import("./keys.js").Edit} edit */
function apply(input, { from, to, piece }) {
  input.setRangeText(piece, from, to, "end");
  input.dispatchEvent(new InputEvent("input", { bubbles: true }));
}

/** @param {Input} input @returns {[number, number]} */
const caret = (input) => [input.selectionStart ?? input.value.length, input.selectionEnd ?? input.value.length];

/** @param {Input} input @param {boolean} up */
function nudge(input, up) {
  const text = nudged(input, up);
  if (text) apply(input, { from: 0, to: input.value.length, piece: text });
}

function say_later() {
  window.clearTimeout(resting);
  resting = window.setTimeout(() => {
    if (field) heard.textContent = in_words(field);
  }, QUIET);
}

/** Leave the pad for the phone's own keyboard, until it is asked for again. @param {Input} input */
function own_keyboard(input) {
  close();
  again.hidden = false;
  for (const each of document.querySelectorAll(FIELDS)) each.removeAttribute("inputmode");
  input.blur();
  input.focus();
}

function other_hand() {
  if (page.dataset.hand) delete page.dataset.hand;
  else page.dataset.hand = "left";
  localStorage.setItem("shoulderline-hand", page.dataset.hand ?? ""); // as static/chosen.js keeps it
}

/** @type {Record<string, (input: Input) => void>} */
const DOES = {
  strong: (input) => apply(input, lean(input.value, "strong")),
  scant: (input) => apply(input, lean(input.value, "scant")),
  back: (input) => apply(input, back(input.value, ...caret(input))),
  up: (input) => nudge(input, true),
  down: (input) => nudge(input, false),
  more: (input) => show(input, pane === "more" ? "digits" : "more"),
  next: go_on,
  keyboard: own_keyboard,
  hand: other_hand,
  close: leave_field,
};

/** @param {Input} input @param {DOMStringMap} key */
function press(input, { put: piece, of, do: what }) {
  if (piece) apply(input, put(input.value, ...caret(input), piece));
  if (piece && pane !== "digits") show(input, "digits");
  if (of) turn(input, of);
  if (what) DOES[what](input);
}

// The page's events.

/** @param {Event} event */
function hold_caret(event) {
  event.preventDefault();
  fresh = false;
}

/** What is read anew stands instead of the old; a second press on the field sets the caret. */
function choose() {
  if (fresh && field && field === document.activeElement) field.select();
  fresh = false;
}

pad.addEventListener("pointerdown", hold_caret);
pad.addEventListener("mousedown", hold_caret);
pad.addEventListener("click", (event) => {
  const key = event.target instanceof Element ? event.target.closest("button") : null;
  if (key && field) press(field, key.dataset);
});
again.addEventListener("click", () => {
  again.hidden = true;
});

document.addEventListener("pointerdown", (event) => {
  window.clearTimeout(lifting);
  pressed = true;
  if (!padded(event.target) || !again.hidden) return;
  event.target.inputMode = "none"; // before focus brings the keyboard up
  if (event.target === document.activeElement && !field) open(event.target);
});
for (const [end, wait] of Object.entries({ pointerup: LIFTED, pointercancel: LIFTED, click: 0 })) {
  document.addEventListener(end, () => {
    window.clearTimeout(lifting);
    lifting = window.setTimeout(lift, wait); // the press comes first
    choose();
  });
}
document.addEventListener("focusin", (event) => {
  fresh = true;
  if (padded(event.target)) open(event.target);
  else leave();
});
document.addEventListener("focusout", () => window.setTimeout(leave));
document.addEventListener("input", say_later);
document.addEventListener("change", (event) => {
  if (field && event.target instanceof HTMLSelectElement) show(field, pane);
});
document.addEventListener("keydown", (event) => {
  if (event.key !== "Escape" || !field) return;
  if (pad.contains(document.activeElement)) field.focus();
  close();
});

function lift() {
  pressed = false;
  leave();
}

function leave() {
  if (field && !pressed && document.activeElement !== field && !pad.contains(document.activeElement)) close();
}

// A field that was entered before this was here: nothing was typed yet, as far as one can tell.
if (padded(document.activeElement)) {
  const { activeElement: entered } = document;
  open(entered);
  if (entered.value === entered.defaultValue) entered.select();
}

pad.dataset.ready = ""; // from here on a field brings the pad
