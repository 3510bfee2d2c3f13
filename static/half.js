/**
 * What is half typed in a form that keeps something is written down at every key, for each address, project and
 * form, and put back when the page opens again. In the phone's database, whose writes are on the disk when they are
 * done: a killed browser loses seconds of localStorage.
 * A tool's form has what was typed in its address, which a page that is opened anew has not: it is written down for
 * each tool and project, and offered where the form opens empty.
 */

import { work_address } from "./core/address.js";
import { run } from "./database.js";
import { typed } from "./form.js";

/** @typedef {import("./gather.js").Place} Place */
/** @typedef {HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement} Field */
/**
 * @typedef {{at: number, fields: Record<string, [string, string]>, address?: string, about?: string}} Half each field with
 *   what it was given and what was typed; of a tool's form the address that says all of it; the place it was typed for
 */

const PREFIX = "half ";
const RANGE = [PREFIX, "half!"]; // the sign after the space: all keys that begin with the prefix
const OLDEST = 30 * 24 * 60 * 60 * 1000; // milliseconds
const MOST = 40; // forms
const ROOM = 20_000; // characters in a form

/** What each field held when the page opened: what was not typed here is not written down. @type {WeakMap<Field, string>} */
const given = new WeakMap();
/** The forms that were typed into since they were last written. @type {Set<HTMLFormElement>} */
const pending = new Set();
let writing = false;
let frame = "";
/** The tool's form has a key of its own: not by what it replaces, which stands in its address. */
let tool = "";

/** The forms that keep something. @returns {HTMLFormElement[]} */
const forms = () => [.../** @type {NodeListOf<HTMLFormElement>} */ (document.querySelectorAll("form[data-keeps]"))];

/** What a maker types into: nothing hidden, no file. @param {HTMLFormElement} form @returns {Field[]} */
function fieldsOf(form) {
  const all = /** @type {Field[]} */ ([...form.elements].filter((each) => "value" in each && "name" in each && each.name));
  return all.filter((field) => ["text", "textarea", "select-one"].includes(field.type));
}

/** @param {HTMLFormElement} form */
const isTool = (form) => form.id === "fields";

/** @param {HTMLFormElement} form */
const keyOf = (form) => (isTool(form) ? tool : `${PREFIX}${frame} ${form.id}`);

/** Whether anything is typed; a choice always stands at something. @param {HTMLFormElement} form */
const isBegun = (form) => fieldsOf(form).some((field) => field.type !== "select-one" && field.value !== "");

/**
 * Put back what was half typed here, and write down from now on what is typed.
 * @param {Place} place
 * @returns {Promise<void>} when it stands in the fields
 */
export async function putBack(place) {
  const project = place.query.get("project") ?? "";
  frame = [location.pathname, project, place.query.get("replaces") ?? ""].join(" ");
  tool = `${PREFIX}${location.pathname} ${project} fields`;
  for (const form of forms()) for (const field of fieldsOf(form)) given.set(field, field.value);
  document.addEventListener("input", note);
  document.addEventListener("change", note);
  addEventListener("pagehide", write);
  addEventListener("submit", posted); // after those of the document: the forms that post themselves
  try {
    await Promise.all(forms().map(async (form) => fill(form, await read(keyOf(form)), place)));
    await offer();
    await clear();
  } catch (error) {
    console.warn(error); // without a store nothing can be kept here at all, which the page's head says
  }
}

/** What was typed, where the field still holds what it was given then. @param {HTMLFormElement} form @param {Half | undefined} half @param {Place} place */
function fill(form, half, place) {
  if (!half || half.at < Date.now() - OLDEST) return;
  if (half.about) place.query.set("held", half.about); // the round stays at the place that this was typed for
  for (const field of fieldsOf(form)) {
    const [before, typed] = half.fields[field.name] ?? [];
    if (typed === undefined || field.value !== before || given.get(field) !== before) continue;
    field.value = typed;
    form.closest("details")?.setAttribute("open", "");
  }
}

/** Where a tool's form opens empty: one press puts back what was typed in it last. */
async function offer() {
  const form = /** @type {HTMLFormElement | null} */ (document.getElementById("fields"));
  const button = document.getElementById("put-back");
  if (!form || !button || isBegun(form)) return;
  const half = await read(tool);
  if (!half?.address || half.at < Date.now() - OLDEST) return;
  const { address } = half;
  button.addEventListener("click", () => location.assign(address));
  button.hidden = false;
}

/** @param {Event} event */
function note({ target }) {
  const form = target instanceof Element ? target.closest("form") : null;
  if (!form || !(form.dataset.keeps || isTool(form))) return;
  pending.add(form);
  write();
}

/** A form that was sent by itself is no longer half typed. @param {SubmitEvent} event */
function posted(event) {
  const form = /** @type {HTMLFormElement} */ (event.target);
  if (form.dataset.keeps && !event.defaultPrevented) forget(form);
}

/** Write what was typed; one write at a time, and what is typed meanwhile in the next one. */
async function write() {
  if (writing || !pending.size) return;
  writing = true;
  const all = [...pending];
  pending.clear();
  await put(all.map((form) => [keyOf(form), halfOf(form)])).catch(console.warn);
  writing = false;
  write();
}

/** @param {HTMLFormElement} form @returns {Half | undefined} nothing where nothing is half typed, or too much */
function halfOf(form) {
  const half = isTool(form) ? addressOf(form) : changesOf(form);
  return half && JSON.stringify(half).length <= ROOM ? half : undefined;
}

/** @param {HTMLFormElement} form @returns {Half | undefined} */
function addressOf(form) {
  const address = work_address(document.body.dataset.tool ?? "", typed());
  return isBegun(form) ? { at: Date.now(), fields: {}, address } : undefined;
}

/** @param {HTMLFormElement} form @returns {Half | undefined} */
function changesOf(form) {
  const changed = fieldsOf(form).filter((field) => given.has(field) && field.value !== given.get(field));
  /** @type {Half["fields"]} */
  const fields = Object.fromEntries(changed.map((field) => [field.name, [given.get(field) ?? "", field.value]]));
  return changed.length ? { at: Date.now(), fields, ...aboutOf(form) } : undefined;
}

/** A round's form goes from place to place: what is typed belongs to one. @param {HTMLFormElement} form @returns {{about?: string}} */
function aboutOf(form) {
  const place = form.elements.namedItem("place");
  return place instanceof HTMLInputElement && place.type === "hidden" ? { about: place.value } : {};
}

/** What this form held is kept, or sent: it is half typed no longer; a sheet with it. @param {HTMLFormElement} form */
export function forget(form) {
  pending.delete(form);
  const keys = form.dataset.keeps === "sheet" ? [keyOf(form), tool] : [keyOf(form)];
  return put(keys.map((key) => [key, undefined])).catch(console.warn);
}

/** @param {[string, Half | undefined][]} halves @returns {Promise<void>} */
function put(halves) {
  return run(["meta"], "readwrite", (transaction) => {
    const meta = transaction.objectStore("meta");
    for (const [key, half] of halves) half ? meta.put(half, key) : meta.delete(key);
    transaction.commit(); // the page may be gone before the writes answer
    return () => {};
  });
}

/** @param {string} key @returns {Promise<Half | undefined>} */
function read(key) {
  return run(["meta"], "readonly", (transaction) => {
    const request = transaction.objectStore("meta").get(key);
    return () => request.result;
  });
}

/** Let go of what is old, and of the oldest where there are too many. @returns {Promise<void>} */
function clear() {
  return run(["meta"], "readwrite", (transaction) => {
    const meta = transaction.objectStore("meta");
    const range = IDBKeyRange.bound(RANGE[0], RANGE[1]);
    const [keys, halves] = [meta.getAllKeys(range), meta.getAll(range)];
    halves.onsuccess = () => over(keys.result, halves.result).forEach((key) => meta.delete(key));
    return () => {};
  });
}

/** @param {IDBValidKey[]} keys @param {Half[]} halves @returns {IDBValidKey[]} those that go */
function over(keys, halves) {
  const all = keys.map((key, at) => ({ key, at: halves[at].at })).sort((a, b) => b.at - a.at);
  return all.filter(({ at }, place) => place >= MOST || at < Date.now() - OLDEST).map(({ key }) => key);
}
