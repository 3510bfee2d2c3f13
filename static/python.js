/**
 * What the translated core needs of Python: webapp/phone/translate.py writes only calls of what is exported here.
 * Here are the methods of texts, lists and dicts, and the boundary between the core and what is around it.
 */
import {
  AttributeError, KeyError, ValueError, isArray, isBool, isInt, isSafe, isText, isTuple, iter, kind, outside, refuse,
  tup,
} from "./python_values.js";
import { eq } from "./python_numbers.js";
import { dict, list, place, pointAt, points, slice, toKey } from "./python_rows.js";

export * from "./python_numbers.js";
export * from "./python_rows.js";
export {
  ArithmeticError, AttributeError, Exact, Exception, IndexError, KeyError, LookupError, Outside, Tuple,
  TypeError, Value, ValueError, ZeroDivisionError, iter, tup,
} from "./python_values.js";

/** @typedef {any} Any what Python would check as it runs */

/** @param {string} text @param {string} chars @param {boolean} left @param {boolean} right */
function strip(text, chars, left, right) {
  const row = points(text);
  let [first, last] = [0, row.length];
  while (left && first < last && chars.includes(row[first])) first++;
  while (right && last > first && chars.includes(row[last - 1])) last--;
  return slice(text, first, last);
}
/** @param {Any} part */
const some = (part) => (!isText(part) ? refuse("text wanted", part) : part || outside("an empty text to look for"));
/** @param {Any} s @param {Any} ends @param {"startsWith"|"endsWith"} way */
function fits(s, ends, way) {
  for (const end of isTuple(ends) ? ends : [ends]) {
    if (!isText(end)) refuse("text wanted", end);
    if (s[way](end)) return true;
  }
  return false;
}
/** @type {Record<string, (...args: Any[]) => Any>} */
const TEXT = {
  join: (s, rows) => {
    const parts = isArray(rows) ? rows : list(rows);
    for (const part of parts) if (!isText(part)) refuse("text wanted", part);
    return parts.join(s);
  },
  split: (s, by) => { if (by === "") throw new ValueError("empty separator"); return s.split(some(by)); },
  startswith: (s, ends) => fits(s, ends, "startsWith"),
  endswith: (s, ends) => fits(s, ends, "endsWith"),
  replace: (s, old, text) => s.split(some(old)).join(isText(text) ? text : refuse("text wanted", text)),
  find: (s, part) => pointAt(s, s.indexOf(some(part))),
  rfind: (s, part) => pointAt(s, s.lastIndexOf(some(part))),
  count: (s, part) => s.split(some(part)).length - 1,
  strip: (s, chars) => strip(s, chars, true, true),
  lstrip: (s, chars) => strip(s, chars, true, false),
  rstrip: (s, chars) => strip(s, chars, false, true),
};
/** @type {Record<string, (...args: Any[]) => Any>} */
const LIST = {
  index: (x, value) => {
    const found = x.findIndex((/** @type {Any} */ other) => eq(other, value));
    if (found < 0) throw new ValueError("not in the list");
    return found;
  },
  count: (x, value) => x.filter((/** @type {Any} */ other) => eq(other, value)).length,
  insert: (x, i, value) => (x.splice(Number(i), 0, value), null),
  pop: (x, i = -1) => x.splice(place(x, i), 1)[0],
};
/** @type {Record<string, (...args: Any[]) => Any>} */
const DICT = {
  items: (x) => Array.from(x, ([key, value]) => tup(key, value)),
  keys: (x) => [...x.keys()],
  values: (x) => [...x.values()],
  pop: (x, key, none) => {
    const found = x.has(toKey(key)) ? x.get(toKey(key)) : none;
    if (found === undefined) throw new KeyError(key);
    x.delete(toKey(key));
    return found;
  },
  update: (x, other) => {
    for (const [key, value] of other instanceof Map ? other : dict(other)) x.set(key, value);
    return null;
  },
};
/**
 * `x.name(...args)`, where texts, lists or dicts have a method of the name.
 * @param {Any} x @param {string} name @param {...Any} args @returns {Any}
 */
export function m(x, name, ...args) {
  const table = isText(x) ? TEXT : x instanceof Map ? DICT : isArray(x) ? LIST : null;
  const method = table ? (!isTuple(x) || name === "index" || name === "count") && table[name] : x?.[name];
  if (!method) throw new AttributeError(`${kind(x)} has no ${name}`);
  return table ? method(x, ...args) : x[name](...args);
}

/* The methods that are called most, of one kind of value each: found at once, without a look for their names. */

/** @param {Any} x @param {Any} key @param {Any} [none] @returns {Any} */
export function get(x, key, none = null) {
  if (!(x instanceof Map)) return m(x, "get", key, none);
  const found = x.get(isText(key) ? key : toKey(key));
  return found === undefined ? none : found;
}
/** @param {Any} x @param {Any} key @param {Any} [value] @returns {Any} */
export function setdefault(x, key, value = null) {
  if (!(x instanceof Map)) return m(x, "setdefault", key, value);
  const at = toKey(key), held = x.get(at);
  if (held === undefined) x.set(at, value);
  return held === undefined ? value : held;
}
/** @param {Any} x @param {Any} value @returns {Any} */
export function append(x, value) {
  if (!isArray(x) || isTuple(x)) return m(x, "append", value);
  x.push(value);
  return null;
}
/** @param {Any} x @param {Any} values @returns {Any} */
export function extend(x, values) {
  if (!isArray(x) || isTuple(x)) return m(x, "extend", values);
  for (const value of values === x ? list(values) : iter(values)) x.push(value);
  return null;
}

/** The items of a dict where each is taken apart at once. @param {Any} x @returns {Iterable<[Any, Any]>} */
export const pairs = (x) => (x instanceof Map ? x : m(x, "items"));

/* The boundary between the core and what is around it. */

/** Plain data as the core takes it: objects become dicts, all the way down. @param {Any} plain @returns {Any} */
export function toPython(plain) {
  if (plain === undefined) return null;
  if (isArray(plain)) return isTuple(plain) ? plain : plain.map(toPython);
  if (plain === null || Object.getPrototypeOf(plain) !== Object.prototype) return plain;
  const there = Object.entries(plain).filter(([, value]) => value !== undefined);
  return new Map(there.map(([key, value]) => [key, toPython(value)]));
}
/** The core's data as plain data: dicts become objects. @param {Any} value @returns {Any} */
export function fromPython(value) {
  if (isArray(value)) return Array.from(value, fromPython);
  if (!(value instanceof Map)) return value;
  return Object.fromEntries(Array.from(value, ([key, inner]) => [key, fromPython(inner)]));
}
/**
 * The same characters as Python's json.dumps(value, ensure_ascii=False, separators=(",", ":")).
 * @param {Any} value @returns {string}
 */
export function json(value) {
  if (value === null || isBool(value) || isText(value)) return JSON.stringify(value);
  if (isInt(value)) return isSafe(value) || typeof value === "bigint" ? String(value) : outside("a float");
  if (isArray(value)) return `[${Array.from(value, json).join(",")}]`;
  if (!(value instanceof Map)) return refuse("not for JSON", value);
  const pairs = Array.from(value, ([key, inner]) => `${JSON.stringify(isText(key) ? key : json(key))}:${json(inner)}`);
  return `{${pairs.join(",")}}`;
}
