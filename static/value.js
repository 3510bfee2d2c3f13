/** What stands in a field, read by the core: in words, and moved by one division. */
import { FACTORS } from "./made.js";
import { mark, spoken } from "./core/mark.js";
import { read, read_count, read_list } from "./core/reading.js";
import { read_pair } from "./core/reading_pairs.js";
import { setting } from "./core/setting.js";
import { add, sub } from "./python.js";

/** @typedef {HTMLInputElement} Input */

/** @param {Input} input @returns {string} */
export const kind_of = (input) => input.dataset.kind ?? "";

/** @param {Input} input @param {string} name */
function chosen(input, name) {
  const select = input.form?.elements.namedItem(name);
  return select instanceof HTMLSelectElement ? select.value : "";
}

/** What the field is said in: its form's own choice, else the project's. @param {Input} input */
export function setting_of(input) {
  const project = document.body.dataset;
  const unit = chosen(input, "unit") || project.unit || "";
  const graduation = chosen(input, "graduation") || (unit === project.unit && project.graduation) || "";
  try {
    return setting(unit, graduation, FACTORS);
  } catch {
    return setting(unit, "", FACTORS); // the graduation is still the other system's
  }
}

/** What stands between several lengths. @type {Record<string, string>} */
const JOINTS = { widths: ";", pair: " x " };

/** Where the last of several lengths begins. @param {Input} input @returns {number} */
function last_of(input) {
  const joint = JOINTS[kind_of(input)] ?? "";
  const place = joint ? input.value.lastIndexOf(joint) : -1;
  return place < 0 ? 0 : place + joint.length;
}

/**
 * Give the text moved by one division (a count by one, of several lengths the last); nothing where what stands
 * there is no length yet, or would be none.
 * @param {Input} input @param {boolean} up @returns {string}
 */
export function nudged(input, up) {
  const last = last_of(input);
  try {
    const moved = kind_of(input) === "count" ? next_count(input.value, up) : next_mark(input, input.value.slice(last), up);
    return last ? `${input.value.slice(0, last).trimEnd()} ${moved}` : moved;
  } catch {
    return "";
  }
}

/** @param {string} text @param {boolean} up @returns {string} */
const next_count = (text, up) => (text ? String(read_count(String((up ? add : sub)(read_count(text), 1)))) : "1");

/** @param {Input} input @param {string} text @param {boolean} up @returns {string} */
function next_mark(input, text, up) {
  const how = setting_of(input);
  return mark((up ? add : sub)(read(text || "0", how), how.division), how);
}

/** @param {Input} input @returns {any[]} */
function read_all(input) {
  const [text, how] = [input.value, setting_of(input)];
  if (kind_of(input) === "widths") return [...read_list(text, how)];
  return kind_of(input) === "pair" ? [...read_pair(text, how)] : [read(text, how)];
}

/** Give the value in words; nothing while it does not read. @param {Input} input @returns {string} */
export function in_words(input) {
  if (kind_of(input) === "count") return "";
  const how = setting_of(input);
  try {
    const words = read_all(input).map((value) => spoken(mark(value, how)));
    return words.join(kind_of(input) === "pair" ? " by " : "; ");
  } catch {
    return "";
  }
}
