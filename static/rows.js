/**
 * A list field as rows, a name and a reading each. The text of its lines stays the field: what a row says is
 * written into it at once, so that the form works it like any other. Without script it is what one types into.
 */

import { trim } from "./core/text.js";

/** @typedef {{name: string, text: string}} Line */

/** What stood where an undo stands now. @type {WeakMap<Element, HTMLElement>} */
const taken = new WeakMap();

/** Show each list of the page as rows, by what its text says. */
export function showRows() {
  for (const list of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-rows]"))) {
    const area = areaOf(list);
    if (!area.hidden) begin(list, area);
    list.replaceChildren(...linesOf(area.value).map((line) => made(list, line)));
    if (!list.hasChildNodes()) add(list);
    number(list);
    mark(list);
  }
}

/** @param {HTMLElement} list @param {HTMLTextAreaElement} area */
function begin(list, area) {
  const field = fieldOf(list);
  area.hidden = true;
  field.querySelector("label")?.removeAttribute("for"); // the group is named by it
  for (const button of field.querySelectorAll("button:not(.take)")) /** @type {HTMLButtonElement} */ (button).hidden = false;
  for (const down of ["pointerdown", "mousedown"]) field.addEventListener(down, holdFocus);
  field.addEventListener("input", () => write(list)); // comes before the form's own
  field.addEventListener("click", ({ target }) => press(list, /** @type {Element} */ (target)));
  field.addEventListener("keydown", (event) => enter(list, event));
  field.addEventListener("paste", (event) => paste(list, event));
  field.addEventListener("onward", (event) => goOn(list, event));
  field.addEventListener("focusout", (event) => leave(field, area, event));
  new MutationObserver(() => mark(list)).observe(errorOf(list), { childList: true });
}

// What belongs to a list.

/** @param {HTMLElement} list @returns {HTMLElement} */
const fieldOf = (list) => /** @type {HTMLElement} */ (list.closest(".field"));

/** @param {HTMLElement} list @returns {HTMLTextAreaElement} */
const areaOf = (list) => /** @type {HTMLTextAreaElement} */ (document.getElementById(list.dataset.rows ?? ""));

/** @param {HTMLElement} list @returns {HTMLElement} */
const errorOf = (list) => /** @type {HTMLElement} */ (document.getElementById(`${list.dataset.rows}-error`));

/** The rows there are; what is taken out is none. @param {HTMLElement} list @returns {HTMLElement[]} */
const rowsOf = (list) => [.../** @type {NodeListOf<HTMLElement>} */ (list.querySelectorAll(".entry:not(.gone)"))];

/** @param {EventTarget | null} target @returns {HTMLElement | null} */
const rowOf = (target) => (target instanceof Element ? target.closest(".entry") : null);

/** @param {Element} row @returns {HTMLInputElement} */
const nameOf = (row) => /** @type {HTMLInputElement} */ (row.querySelector(".entry-name"));

/** @param {Element} row @returns {HTMLInputElement} */
const readingOf = (row) => /** @type {HTMLInputElement} */ (row.querySelector(".entry-reading"));

// Lines to rows, and rows to lines.

/** The lines that say something, each parted at its last colon as the core parts it. @param {string} text @returns {Line[]} */
function linesOf(text) {
  const lines = text.split(/\r?\n/).filter((line) => trim(line));
  return lines.map((line) => {
    const colon = line.lastIndexOf(":");
    return { name: trim(line.slice(0, Math.max(colon, 0))), text: trim(line.slice(colon + 1)) };
  });
}

/** @param {Element} row @returns {string} */
function lineOf(row) {
  const [name, text] = [trim(nameOf(row).value), trim(readingOf(row).value)];
  return name ? `${name}: ${text}` : text;
}

/** Let the field say what its rows say. @param {HTMLElement} list */
function write(list) {
  areaOf(list).value = rowsOf(list).map(lineOf).filter(Boolean).join("\n");
  number(list);
}

/** The same, where no typing tells the form of it. @param {HTMLElement} list */
function change(list) {
  write(list);
  areaOf(list).dispatchEvent(new InputEvent("input", { bubbles: true }));
}

/** Number the rows; one without a name goes by its number among those that say something. @param {HTMLElement} list */
function number(list) {
  let said = 0;
  rowsOf(list).forEach((row, at) => {
    nameOf(row).placeholder = at ? String(said + 1) : "1, or a name";
    if (lineOf(row)) said += 1;
    nameOf(row).ariaLabel = `Name ${at + 1}`;
    readingOf(row).ariaLabel = `Reading ${at + 1}`;
    /** @type {Element} */ (row.querySelector("[data-row]")).ariaLabel = `take out row ${at + 1}`;
  });
}

/** Mark the row that the field's error is about: the core names it first. @param {HTMLElement} list */
function mark(list) {
  const sentence = errorOf(list).textContent ?? "";
  for (const row of rowsOf(list)) {
    const name = trim(nameOf(row).value) || nameOf(row).placeholder.split(",")[0];
    if (sentence.startsWith(`${name}: `)) readingOf(row).setAttribute("aria-invalid", "true");
    else readingOf(row).removeAttribute("aria-invalid");
  }
}

// Rows come and go.

/** @param {HTMLElement} list @param {string} part of the template @returns {HTMLElement} */
function cloned(list, part) {
  const template = /** @type {HTMLTemplateElement} */ (fieldOf(list).querySelector("template"));
  return /** @type {HTMLElement} */ (template.content.querySelector(part)?.cloneNode(true));
}

/** @param {HTMLElement} list @param {Line} line @returns {HTMLElement} */
function made(list, { name, text }) {
  const row = cloned(list, ".entry");
  nameOf(row).value = name;
  readingOf(row).value = text;
  return row;
}

/** Add a blank row at the end. @param {HTMLElement} list @returns {HTMLElement} */
function add(list) {
  const row = made(list, { name: "", text: "" });
  list.append(row);
  number(list);
  return row;
}

/** Where a row is begun: at its name, where the rows before it have names. @param {HTMLElement} list @param {Element} row */
function startOf(list, row) {
  return rowsOf(list).some((each) => trim(nameOf(each).value)) ? nameOf(row) : readingOf(row);
}

/** Add a row behind the last one, where that says something. @param {HTMLElement} list @param {Element | null} row */
function added(list, row) {
  const rows = rowsOf(list);
  return row && row === rows[rows.length - 1] && trim(readingOf(row).value) ? add(list) : undefined;
}

/** The pad's way on: to the next reading, which it finds itself; from the last one to a new row. @param {HTMLElement} list @param {Event} event */
function goOn(list, event) {
  const row = added(list, rowOf(event.target));
  if (!row) return;
  event.preventDefault();
  startOf(list, row).focus();
}

/** Take a row out; undo stands where the press was. @param {HTMLElement} list @param {HTMLElement} row */
function takeOut(list, row) {
  const [typing, pressed] = [row.contains(document.activeElement), document.activeElement?.matches("[data-row]")];
  for (const before of list.querySelectorAll(".gone")) before.remove();
  const gone = cloned(list, ".gone");
  taken.set(gone, row);
  row.replaceWith(gone);
  const said = /** @type {Element} */ (gone.querySelector(".entry-gone"));
  said.textContent = lineOf(row) ? `taken out: ${lineOf(row)}` : "taken out";
  const rows = rowsOf(list);
  const near = rows.find((each) => gone.compareDocumentPosition(each) & Node.DOCUMENT_POSITION_FOLLOWING);
  const next = near ?? rows[rows.length - 1] ?? add(list);
  if (typing) (pressed ? gone.querySelector("button") : readingOf(next))?.focus();
  change(list);
}

/** @param {HTMLElement} list @param {HTMLElement} gone */
function undo(list, gone) {
  const row = /** @type {HTMLElement} */ (taken.get(gone));
  const typing = gone.contains(document.activeElement);
  gone.replaceWith(row);
  if (typing) readingOf(row).focus();
  change(list);
}

// The page's events.

/** A press on a row's button leaves the focus where it is: else the pad would close, and move what is pressed. @param {Event} event */
function holdFocus(event) {
  if (event.target instanceof Element && event.target.closest("[data-row]")) event.preventDefault();
}

/** @param {HTMLElement} list @param {Element} target */
function press(list, target) {
  const button = /** @type {HTMLElement | null} */ (target.closest("[data-row]"));
  const row = rowOf(target);
  if (button?.dataset.row === "add") startOf(list, add(list)).focus();
  if (button?.dataset.row === "out" && row) takeOut(list, row);
  if (button?.dataset.row === "undo" && row) undo(list, row);
}

/** The enter key goes from a name to its reading, and from there to the next row. @param {HTMLElement} list @param {KeyboardEvent} event */
function enter(list, event) {
  const row = rowOf(event.target);
  if (event.key !== "Enter" || !row || !(event.target instanceof HTMLInputElement)) return;
  event.preventDefault();
  const last = event.target === readingOf(row);
  if (last) added(list, row);
  const rows = rowsOf(list);
  const next = last ? startOf(list, rows[rows.indexOf(row) + 1] ?? row) : readingOf(row);
  next.focus();
  next.select();
}

/** Several lines at once become rows. @param {HTMLElement} list @param {ClipboardEvent} event */
function paste(list, event) {
  const row = rowOf(event.target);
  const text = event.clipboardData?.getData("text") ?? "";
  if (!row || !trim(text).includes("\n")) return;
  event.preventDefault();
  row.after(...linesOf(text).map((line) => made(list, line)));
  if (!lineOf(row)) row.remove();
  change(list);
}

/** The field is left when all its rows are. @param {HTMLElement} field @param {HTMLElement} area @param {FocusEvent} event */
function leave(field, area, event) {
  const inside = event.relatedTarget instanceof Node && field.contains(event.relatedTarget);
  if (event.target !== area && !inside) area.dispatchEvent(new FocusEvent("focusout", { bubbles: true }));
}
