/**
 * The forms that keep something: with script, a press makes an entry in the outbox, by the same core and the
 * same field names as the server's way; on the disk first, then said, then sent.
 */

import { part_address, project_address, round_address, sheet_address } from "./core/address.js";
import { draft } from "./core/entries.js";
import { spoken_in } from "./core/view_tool.js";
import { entriesOf } from "./entry.js";
import { putError, showErrors, typed } from "./form.js";
import { forget } from "./half.js";
import { uuid7 } from "./ids.js";
import { save } from "./local.js";
import { FACTORS, TOOLS } from "./made.js";
import { saved, settled } from "./pace.js";

/** @typedef {import("./gather.js").Gathered} Gathered */
/** @typedef {import("./gather.js").Place} Place */

const OWN = new Set(["entry_id", "csrf_token"]);
const SHEETS = new Set(["sheet", "like", "again"]); // forms that make sheets
const AGAIN = "again"; // what it names comes last, behind what that stands on; without a name the page stays
const CUT = "cut";
const TWICE = 700; // milliseconds: the same again within them is the same press
const LATER = "Kept on this phone. Its page opens when the server can be reached.";
const FAILED = "This could not be kept on this phone";
const FULL = "there is no room left on it. Make some, then press again: what is typed stays here. What is not sent can be saved as a file, under This phone on the first page.";

/** The id of the entry that a form makes next. @type {WeakMap<HTMLFormElement, string>} */
const ids = new WeakMap();
/** The forms that are at it. @type {WeakSet<HTMLFormElement>} */
const busy = new WeakSet();
/** When a form last kept something, what it held, what it held then, and where the button was. @type {WeakMap<HTMLFormElement, {at: number, held: string[], spot: string}>} */
const last = new WeakMap();

/** @returns {HTMLFormElement[]} */
function forms() {
  return [.../** @type {NodeListOf<HTMLFormElement>} */ (document.querySelectorAll("form[data-keeps]"))];
}

/**
 * From now on the phone keeps what is pressed.
 * @param {() => Gathered | undefined} gathered
 * @param {() => Promise<void>} show
 */
export function takeOver(gathered, show) {
  document.addEventListener("submit", (event) => {
    const form = /** @type {HTMLFormElement} */ (event.target);
    const g = gathered();
    if (!form.dataset.keeps || !g || !canKeep(form)) return;
    event.preventDefault();
    press(form, event.submitter, g, show);
  });
  document.addEventListener("formdata", (event) => {
    const form = /** @type {HTMLFormElement} */ (event.target);
    const g = gathered();
    if (form.dataset.keeps === "sheet" && g) putFields(event.formData, g);
  });
}

/** A sheet is kept with what stands in the tool's form now. @param {FormData} data @param {Gathered} g */
function putFields(data, g) {
  const now = spoken_in(g, typed());
  const names = g.get("tool").fields.map((/** @type {{name: string}} */ field) => field.name);
  for (const name of [...names, "unit", "graduation", "links"]) data.set(name, now.get(name) ?? "");
}

/** A sheet needs a digest, which plain http has no means for: its form posts itself then. @param {HTMLFormElement} form */
function canKeep(form) {
  return !SHEETS.has(form.dataset.keeps ?? "") || Boolean(crypto.subtle);
}

/**
 * Fill in what a shell leaves open, and open the buttons.
 * @param {Gathered} g
 * @param {Place} place
 * @param {Map<string, any>} view what it `fills` is filled into hidden fields
 */
export function fillForms(g, place, view) {
  const project = g.get("project");
  const own = { entry: place.names.entry, tool: g.get("tool")?.name, replaces: place.query.get("replaces") };
  const given = { ...own, ...Object.fromEntries(view.get("fills") ?? []) };
  for (const [name, value] of Object.entries(given)) {
    for (const field of document.querySelectorAll(`form[data-keeps] input[type="hidden"][name="${name}"]`)) {
      /** @type {HTMLInputElement} */ (field).value = value ?? "";
    }
  }
  fillCalled(place);
  document.getElementById("keeping")?.toggleAttribute("hidden", !project);
  if (project) document.getElementById("out")?.setAttribute("href", `${project_address(project.get("id"))}/file`);
  openButtons(g);
}

/** A sheet that is changed keeps its name. @param {Place} place */
export function fillCalled(place) {
  const called = /** @type {HTMLInputElement | null} */ (document.getElementById("sheet-called"));
  if (called && !called.value) called.value = place.query.get("called") ?? "";
}

/** A way to measure a place says which. @param {Place} place */
export function fillPlace(place) {
  const field = /** @type {HTMLInputElement | null} */ (document.getElementById("reading-place"));
  if (field && !field.value) field.value = place.query.get("place") ?? "";
}

/** @param {Gathered} g */
function openButtons(g) {
  for (const form of forms()) {
    const possible = form.dataset.keeps === "project" || g.get("project") !== null;
    for (const button of form.querySelectorAll("button")) button.disabled = !possible;
  }
}

/**
 * @param {HTMLFormElement} form
 * @param {HTMLElement | null} submitter
 * @param {Gathered} g
 * @param {() => Promise<void>} show
 */
async function press(form, submitter, g, show) {
  const data = new FormData(form, submitter);
  const spot = spotOf(submitter);
  if (busy.has(form) || isRepeat(form, data, spot)) return;
  busy.add(form);
  try {
    const entry = await keep(form, data, g);
    if (entry) await follow(form, entry, data, spot, show);
  } catch (error) {
    putError(form.id, `${FAILED}: ${why(error)}`);
  } finally {
    busy.delete(form);
  }
}

/** @param {unknown} error @returns {string} */
function why(error) {
  if (error instanceof DOMException && error.name === "QuotaExceededError") return FULL;
  return error instanceof Error ? error.message : String(error);
}

/** @param {FormData} data */
const written = (data) => JSON.stringify([...data].map(([name, value]) => [name, String(value)]));

/** Where a button is on the screen, in whole pixels: after a cut the next rail's button comes to stand there. @param {HTMLElement | null} button */
function spotOf(button) {
  const box = button?.getBoundingClientRect();
  return box ? `${Math.round(box.left)} ${Math.round(box.top)}` : "";
}

/** Whether this is the second half of a double press: the same again, the emptied form, or what came under the thumb. @param {HTMLFormElement} form @param {FormData} data @param {string} spot */
function isRepeat(form, data, spot) {
  const before = last.get(form);
  if (!before || performance.now() >= before.at + TWICE) return false;
  return before.held.includes(written(data)) || (form.dataset.keeps === CUT && before.spot === spot);
}

/**
 * Keep what was pressed, or put what stands against it at its fields.
 * @param {HTMLFormElement} form
 * @param {FormData} data
 * @param {Gathered} g
 */
async function keep(form, data, g) {
  const kind = form.dataset.keeps ?? "";
  const outcome = draft(kind, typedIn(data), g.get("project"), TOOLS, FACTORS, g.get("worked"));
  clearErrors(form);
  if (outcome.has("errors")) return putErrors(form.id, outcome.get("errors"));
  const id = ids.get(form) ?? uuid7();
  ids.set(form, id);
  const made = await entriesOf(outcome, id, g.get("project")?.get("id"));
  await save(...made);
  await saved();
  return kind === AGAIN && data.get("entry") ? made[made.length - 1] : made[0];
}

/** What was typed, by the names the server reads as well. @param {FormData} data @returns {Map<string, string>} */
function typedIn(data) {
  return new Map([...data].filter(([name]) => !OWN.has(name)).map(([name, value]) => [name, String(value)]));
}

/**
 * Show what was kept: a project and a sheet have pages of their own, all else stands on this one.
 * @param {HTMLFormElement} form
 * @param {{id: string, project: string, kind: string}} entry
 * @param {FormData} data
 * @param {string} spot
 * @param {() => Promise<void>} show
 */
async function follow(form, entry, data, spot, show) {
  ids.delete(form);
  await forget(form);
  const address = form.dataset.keeps === AGAIN && !data.get("entry") ? "" : pageOf(entry);
  if (address && await canOpen()) return location.assign(address);
  form.reset();
  last.set(form, { at: performance.now(), held: [written(data), written(new FormData(form))], spot });
  if (address) putError(form.id, LATER);
  form.dispatchEvent(new CustomEvent("kept", { bubbles: true }));
  await show();
  last.get(form)?.held.push(written(new FormData(form))); // a round has put its next place in
}

/** @param {{id: string, project: string, kind: string}} entry @returns {string} nothing for what has no page of its own */
function pageOf({ id, project, kind }) {
  if (kind === "project") return project_address(id);
  if (kind === "round") return round_address(project, id);
  if (kind === "part" && document.body.dataset.screen !== "part") return part_address(project, id);
  return kind === "sheet" ? sheet_address(project, id) : "";
}

/** Whether another page can open: by the worker, or by the server once that has what was kept. @returns {Promise<boolean>} */
async function canOpen() {
  return Boolean(navigator.serviceWorker?.controller) || await settled() === "through";
}

/** @param {HTMLFormElement} form */
function clearErrors(form) {
  putError(form.id, "");
  for (const field of form.elements) if (field.id) putError(field.id, "");
}

/** Each sentence at its field; one without a field at the form's head. @param {string} id of the form @param {Map<string, string>} errors */
function putErrors(id, errors) {
  if (id === "sheet") showErrors();
  for (const [name, sentence] of errors) {
    if (!putError(`${id}-${name}`, sentence) && !(id === "sheet" && putError(name, sentence))) putError(id, sentence);
  }
}
