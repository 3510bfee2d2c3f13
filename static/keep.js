/** The forms that keep something: what they are filled with, and that a press is the phone's own (press.js). */

import { project_address } from "./core/address.js";
import { spoken_in } from "./core/view_tool.js";
import { noteFault } from "./errors.js";
import { putError, typed } from "./form.js";

/** @typedef {import("./gather.js").Gathered} Gathered */
/** @typedef {import("./gather.js").Place} Place */

const SHEETS = new Set(["sheet", "like", "again"]); // forms that make sheets

const LACKING = "This page could not be loaded to its end: load it again. What is typed stays here.";

/** The forms that post by themselves, since what a press needs could not be loaded. @type {WeakSet<HTMLFormElement>} */
const plain = new WeakSet();

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
    pressed(form, event.submitter, g, show);
  });
  document.addEventListener("formdata", (event) => {
    const form = /** @type {HTMLFormElement} */ (event.target);
    const g = gathered();
    if (form.dataset.keeps === "sheet" && g) putFields(event.formData, g);
  });
}

/**
 * @param {HTMLFormElement} form
 * @param {HTMLElement | null} submitter
 * @param {Gathered} g
 * @param {() => Promise<void>} show
 */
async function pressed(form, submitter, g, show) {
  const [data, spot] = [new FormData(form, submitter), spotOf(submitter)]; // as it was pressed, whatever is done meanwhile
  const more = await import("./more.js").catch(noteFault);
  if (more) return more.press(form, data, spot, g, show);
  if (!form.hasAttribute("action")) return putError(form.id, LACKING);
  plain.add(form); // the server that drew this page takes it without script
  form.requestSubmit(submitter);
}

/** Where a button is on the screen, in whole pixels: after a cut the next rail's button comes to stand there. @param {HTMLElement | null} button */
function spotOf(button) {
  const box = button?.getBoundingClientRect();
  return box ? `${Math.round(box.left)} ${Math.round(box.top)}` : "";
}

/** A sheet is kept with what stands in the tool's form now. @param {FormData} data @param {Gathered} g */
function putFields(data, g) {
  const now = spoken_in(g, typed());
  const names = g.get("tool").fields.map((/** @type {{name: string}} */ field) => field.name);
  for (const name of [...names, "unit", "graduation", "links"]) data.set(name, now.get(name) ?? "");
}

/** A sheet needs a digest, which plain http has no means for: its form posts itself then. @param {HTMLFormElement} form */
function canKeep(form) {
  return !plain.has(form) && (!SHEETS.has(form.dataset.keeps ?? "") || Boolean(crypto.subtle));
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
