/**
 * A press on a form that keeps: it makes an entry in the outbox, by the same core and the same field names as the
 * server's way; on the disk first, then said, then sent.
 */

import { part_address, project_address, round_address, sheet_address } from "./core/address.js";
import { draft } from "./core/entries.js";
import { entriesOf } from "./entry.js";
import { putError, showErrors } from "./form.js";
import { forget } from "./half.js";
import { uuid7 } from "./ids.js";
import { save } from "./local.js";
import { FACTORS } from "./made.js";
import { saved, settled } from "./pace.js";
import { everyTool } from "./tools.js";

/** @typedef {import("./gather.js").Gathered} Gathered */

const OWN = new Set(["entry_id", "csrf_token"]);
const CUT = "cut";
const AGAIN = "again"; // what it names comes last, behind what that stands on; without a name the page stays
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

/**
 * Keep what was pressed, once, and show it.
 * @param {HTMLFormElement} form
 * @param {FormData} data what it held at the press
 * @param {string} spot where its button was
 * @param {Gathered} g
 * @param {() => Promise<void>} show
 */
export async function press(form, data, spot, g, show) {
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
  const outcome = draft(kind, typedIn(data), g.get("project"), await everyTool(), FACTORS, g.get("worked"));
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
