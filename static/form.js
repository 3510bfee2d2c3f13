/**
 * A tool's form: worked as it is typed, the address follows, nothing is submitted. An error shows when its
 * field is left, at once where the page was opened with it; until then the last good answer stays and says so.
 */

import { work_address } from "./core/address.js";

const FOLLOW = 300; // milliseconds: browsers refuse an address that changes too often
const SPOKEN = new Set(["unit", "graduation"]);
const HELD = "This is the answer to what stood here before the last change.";

const form = /** @type {HTMLFormElement | null} */ (document.getElementById("fields"));
const main = document.getElementById("main");
const notice = document.getElementById("held");

/** The fields that were left once. @type {Set<string>} */
const left = new Set();
/** @type {Map<string, string>} */
let errors = new Map();
/** Whether anything was typed since the page was opened. */
let touched = false;
/** Whether main shows an answer, or has nothing to say yet: what then stands, stays. */
let stands = false;
let timer = 0;

/** Put what the address says into the fields. @param {Map<string, string>} query */
export function fillFields(query) {
  for (const field of fields()) {
    if (query.has(field.name)) field.value = query.get(field.name) ?? "";
  }
}

/** @returns {HTMLInputElement[]} */
function fields() {
  const all = form ? [...form.elements] : [];
  return /** @type {HTMLInputElement[]} */ (all.filter((each) => "name" in each && each.name && !each.matches("button")));
}

/** What stands in the fields now; a choice alone, which always stands at something, says nothing yet. @returns {Map<string, string>} */
export function typed() {
  const said = fields().filter((field) => field.value);
  const begun = said.some((field) => ["text", "textarea"].includes(field.type));
  const counts = said.filter((field) => begun || field.type === "hidden" || SPOKEN.has(field.name));
  return new Map(counts.map((field) => [field.name, field.value]));
}

/**
 * Work the form as it is typed.
 * @param {(typed: Map<string, string>) => void} retype
 * @param {boolean} drawn whether the server drew main, with the errors at their fields
 */
export function followFields(retype, drawn) {
  if (!form) return;
  if (drawn) stands = !form.querySelector(".error:not(:empty)");
  for (const event of ["input", "change"]) {
    form.addEventListener(event, () => {
      touched = true;
      retype(typed());
      followLater();
    });
  }
  form.addEventListener("focusout", ({ target }) => leave(/** @type {HTMLInputElement} */ (target).name));
  form.addEventListener("submit", (event) => {
    if (event.submitter?.classList.contains("take")) return; // leads to what its field can take its value from
    event.preventDefault();
    showErrors();
  });
  addEventListener("pagehide", follow);
  // A changed address asks for the page's icon, by the very worker that is to go then: Chromium leaves both waiting.
  document.getElementById("update")?.addEventListener("click", () => clearTimeout(timer));
}

/** @param {string} name */
function leave(name) {
  if (!touched || !name) return;
  left.add(name);
  say();
}

/** Show every error there is: the maker asked for the answer. */
export function showErrors() {
  fields().forEach((field) => left.add(field.name));
  say();
}

function followLater() {
  clearTimeout(timer);
  timer = window.setTimeout(follow, FOLLOW);
}

/** Let the address say what the fields say. */
function follow() {
  clearTimeout(timer);
  if (!touched) return;
  const address = work_address(document.body.dataset.tool ?? "", typed());
  if (address !== location.pathname + location.search) history.replaceState(history.state, "", address);
}

/**
 * Take the errors of a view, and say whether it is to be drawn.
 * @param {Map<string, any>} view
 * @returns {boolean}
 */
export function judge(view) {
  errors = view.get("errors");
  const hold = view.get("wrong") && (stands || touched);
  if (view.get("wrong") && !touched) fields().forEach((field) => left.add(field.name));
  if (!view.get("wrong")) stands = true;
  say();
  hang(hold && Boolean(main?.querySelector(".hero")));
  return !hold;
}

/** @param {boolean} hold */
function hang(hold) {
  main?.classList.toggle("held", hold);
  const words = hold ? HELD : "";
  if (notice && notice.textContent !== words) notice.textContent = words;
}

/** Put each error at its field, once that was left; one that no longer holds goes at once. */
function say() {
  for (const { name } of fields()) putError(name, left.has(name) ? errors.get(name) ?? "" : "");
}

/**
 * Put a sentence at a field.
 * @param {string} id of the field
 * @param {string} sentence nothing takes away what stands there
 * @returns {boolean} whether there is such a field
 */
export function putError(id, sentence) {
  const place = document.getElementById(`${id}-error`);
  if (!place) return false;
  if (place.textContent !== sentence) place.textContent = sentence;
  const field = document.getElementById(id);
  if (sentence) field?.setAttribute("aria-invalid", "true");
  else field?.removeAttribute("aria-invalid");
  return true;
}

/** Say in each blank field what stands for it, and under each linked one where its value is from. @param {Map<string, any>} view */
export function hint(view) {
  for (const [id, source] of view.get("linked") ?? []) sayFrom(id, source.get("text"), source.get("href"));
  for (const button of form?.querySelectorAll(".take") ?? []) button.toggleAttribute("hidden", !view.get("project"));
  for (const [id, text] of view.get("stands") ?? []) {
    const field = /** @type {HTMLInputElement | null} */ (document.getElementById(id));
    if (field && field.placeholder !== text) field.placeholder = text;
  }
}

/** @param {string} id of a field @param {string} text @param {string} href of the source's page, nothing where there are several */
function sayFrom(id, text, href) {
  const place = document.querySelector(`#${id}-source a`);
  if (!place) return;
  if (place.textContent !== text) place.textContent = text;
  if (href) place.setAttribute("href", href);
  else place.removeAttribute("href");
}
