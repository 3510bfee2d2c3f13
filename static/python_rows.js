/** Python's texts, lists and dicts, and the builtins that walk through them. A text is one of code points. */
import {
  Exact, Exception, IndexError, KeyError, Tuple, TypeError, ValueError, isArray, isBool, isInt, isText, isTuple,
  iter, kind, outside, refuse, settle, tup,
} from "./python_values.js";
import { add, eq, gt, lt, t } from "./python_numbers.js";

/** @typedef {any} Any what Python would check as it runs */

const WIDE = /[\ud800-\udfff]/;
/** @param {string} text @returns {Any} */
export const points = (text) => (WIDE.test(text) ? [...text] : text);
/** The place in code points of a place in code units. @param {string} text @param {number} at */
export const pointAt = (text, at) => (at < 0 ? at : points(text.slice(0, at)).length);
/** A dict that is being made, with what stands behind ** in it. @param {Map<Any, Any>} made @param {Any} x */
export function mixed(made, x) {
  if (!(x instanceof Map)) refuse("no dict", x);
  for (const [key, value] of x) made.set(key, value);
  return made;
}
/** @param {Any} x @returns {number} */
export const len = (x) =>
  isText(x) ? points(x).length : isArray(x) ? x.length : x instanceof Map ? x.size : refuse("no length", x);
/** A key as a Map takes it. @param {Any} x */
export function toKey(x) {
  if (isText(x) || x === null) return x;
  if (isInt(x)) return isBool(x) ? Number(x) : x;
  return isArray(x) && !isTuple(x) || x instanceof Map ? refuse("unhashable", x) : outside(`a key of ${kind(x)}`);
}
/** @param {Any} x @param {Any} i */
export const place = (x, i) => {
  if (!isInt(i)) refuse("no index", i);
  const at = i < 0 ? Number(i) + x.length : Number(i);
  if (!(at >= 0 && at < x.length)) throw new IndexError(`${i} of ${x.length}`);
  return at;
};
/** `x[i]`, short enough for an engine to put it where it is called. @param {Any} x @param {Any} i @returns {Any} */
export function at(x, i) {
  if (!(x instanceof Map)) return atPlace(x, i);
  const found = x.get(isText(i) ? i : toKey(i));
  return found === undefined ? missing(i) : found;
}
/** @param {Any} i @returns {never} */
const missing = (i) => { throw new KeyError(i); };
/** @param {Any} x @param {Any} i @returns {Any} */
function atPlace(x, i) {
  const row = isText(x) ? points(x) : isArray(x) ? x : refuse("no subscript", x);
  return row[place(row, i)];
}
/** `x[i] = value`, in Python's order of evaluation. @param {Any} value @param {Any} x @param {Any} i */
export function put(value, x, i) {
  if (x instanceof Map) x.set(toKey(i), value);
  else if (isArray(x) && !isTuple(x)) x[place(x, i)] = value;
  else refuse("no subscript to set", x);
}
/** @param {Any} x */
const bound = (x) => (x === null ? undefined : isInt(x) ? Number(x) : refuse("no bound", x));
/** `x[from:to]` @param {Any} x @param {Any} [from] @param {Any} [to] @returns {Any} */
export function slice(x, from = null, to = null) {
  const row = isText(x) ? points(x) : isArray(x) ? x : refuse("no slice", x);
  const part = row.slice(bound(from), bound(to));
  return isText(x) && isArray(part) ? part.join("") : part;
}
/**
 * The row x, when it has as many as the targets; a target that is a tuple has a shape of its own.
 * @param {Any} x @param {Any} shape @returns {Any[]}
 */
export function unpack(x, shape) {
  if (isArray(x) && x.length === shape) return x;
  const row = isArray(x) ? x : [...iter(x)], count = isArray(shape) ? shape.length : shape;
  if (row.length !== count) throw new ValueError(`${count} values wanted, not ${row.length}`);
  return isArray(shape) ? Array.from(row, (part, i) => shape[i] ? unpack(part, shape[i]) : part) : row;
}
/** The row x as the last arguments of a call. @param {Any} x @param {number} least @param {number} most */
export function spread(x, least, most) {
  const row = list(x);
  if (row.length < least || row.length > most) throw new TypeError(`${row.length} arguments, not ${least} to ${most}`);
  return row;
}
/** @param {Any} a @param {Any} rows */
function isAmong(a, rows) {
  for (const x of iter(rows)) if (eq(a, x)) return true;
  return false;
}
/** `a in b` @param {Any} a @param {Any} b @returns {boolean} */
export function has(a, b) {
  if (b instanceof Map) return b.has(isText(a) ? a : toKey(a));
  return isText(b) ? (isText(a) ? b.includes(a) : refuse("in a text", a)) : isAmong(a, b);
}

/* Builtins. What is made here is only walked through: the translator sees to that. */

/** @param {Any} first @param {Any} [end] @param {Any} [step] */
export function* range(first, end, step = 1) {
  const [from, to] = end === undefined ? [0, first] : [first, end];
  for (const bound of [from, to, step]) if (!isInt(bound)) refuse("range", bound);
  if (step == 0) throw new ValueError("range() step is zero");
  for (let i = Number(from); step > 0 ? i < to : i > to; i += Number(step)) yield i;
}
/** @param {Any} x @param {Any} [start] */
export function* enumerate(x, start = 0) {
  let i = start;
  for (const value of iter(x)) {
    yield tup(i, value);
    i = add(i, 1);
  }
}
/** @param {Any[]} rows @param {boolean} [strict] */
export function* zip(rows, strict = false) {
  const walks = rows.map((row) => iter(row)[Symbol.iterator]());
  while (walks.length) {
    const steps = [];
    for (const walk of walks) {
      const step = walk.next();
      steps.push(step);
      if (step.done && !strict) return;
    }
    const done = steps.filter((step) => step.done).length;
    if (done && done < steps.length) throw new ValueError("zip() of different lengths");
    if (done) return;
    yield tup(...steps.map((step) => step.value));
  }
}
/** @param {Any} x */
export const reversed = (x) => list(x).reverse();
/**
 * The list that a comprehension makes: Array.from with a function is three times slower.
 * @param {Iterable<Any>} rows @param {(row: Any) => Any} give @returns {Any[]}
 */
export function each(rows, give) {
  const made = [];
  for (const row of rows) made.push(give(row));
  return made;
}
/** @param {Any} [x] @returns {Any[]} */
export const list = (x = []) => Array.from(iter(x));
/** @param {Any} [x] @returns {Any} */
export function tuple(x = []) {
  if (isTuple(x)) return x;
  const made = new Tuple();
  for (const value of iter(x)) made.push(value);
  return made;
}
/** @param {Any} [x] */
export const dict = (x = []) => new Map(x instanceof Map ? x : list(x).map(pair));
/** @param {Any} x @returns {[Any, Any]} */
function pair(x) {
  const [key, value] = unpack(x, 2);
  return [toKey(key), value];
}
/** @param {Any} x @param {Any} [key] @param {boolean} [reverse] */
export function sorted(x, key = null, reverse = false) {
  const sign = t(reverse) ? -1 : 1;
  const rows = each(iter(x), (value) => ({ value, by: key ? key(value) : value }));
  return rows.sort((a, b) => sign * (lt(a.by, b.by) ? -1 : lt(b.by, a.by) ? 1 : 0)).map((row) => row.value);
}
/** @param {Any} x @param {Any} key @param {Any} none @param {(a: Any, b: Any) => boolean} before */
function best(x, key, none, before) {
  let found = none, mark;
  let first = true;
  for (const value of iter(x)) {
    const by = key ? key(value) : value;
    if (first || before(by, mark)) [found, mark] = [value, by];
    first = false;
  }
  if (found === undefined) throw new ValueError("nothing to choose from");
  return found;
}
/** @param {Any} x @param {Any} [key] @param {Any} [none] @returns {Any} */
export const min = (x, key = null, none = undefined) => best(x, key, none, lt);
/** @param {Any} x @param {Any} [key] @param {Any} [none] @returns {Any} */
export const max = (x, key = null, none = undefined) => best(x, key, none, gt);
/** @param {Any} x @param {Any} [start] @returns {Any} */
export function sum(x, start = 0) {
  if (isText(start)) refuse("sum", start);
  let total = start;
  for (const value of iter(x)) total = add(total, value);
  return total;
}
/** @param {Any} x */
export const all = (x) => { for (const value of iter(x)) if (!t(value)) return false; return true; };
/** @param {Any} x */
export const any = (x) => { for (const value of iter(x)) if (t(value)) return true; return false; };
/** @param {Any} x */
export const ord = (x) => (isText(x) && len(x) === 1 ? x.codePointAt(0) : refuse("ord", x));
/** @param {Any} x @returns {string} */
export function str(x) {
  if (isText(x)) return x;
  if (isBool(x)) return x ? "True" : "False";
  if (x === null) return "None";
  if (isInt(x) || x instanceof Exact) return String(x);
  const args = x instanceof KeyError ? null : x instanceof Exception ? x.args : null;
  return args && args.length < 2 ? (args.length ? str(args[0]) : "") : outside(`str() of ${kind(x)}`);
}
/** @param {Any} x @returns {Any} */
export function int(x = 0) {
  if (isInt(x)) return add(x, 0);
  if (x instanceof Exact) return /** @type {Any} */ (x).whole();
  if (!isText(x)) return refuse("int", x);
  if (/^[0-9]{1,15}$/.test(x)) return Number(x);
  if (/^[+-]?[0-9]+$/.test(x)) return settle(BigInt(x[0] === "+" ? x.slice(1) : x));
  if (/[_\s]|[^ -~]/.test(x)) outside("int() of a text with more than ASCII digits");
  throw new ValueError(`int() of ${x}`);
}
/** @type {Record<string, (x: Any) => boolean>} */
const KINDS = {
  int: isInt, bool: isBool, str: isText, tuple: isTuple,
  dict: (x) => x instanceof Map,
  list: (x) => isArray(x) && !isTuple(x),
};
/** @param {Any} x @param {Any} kind a name of Python's own or a class @param {...Any} others */
export const isinstance = (x, kind, ...others) =>
  kind === "str" && isText(x) || isOf(x, kind) || others.some((other) => isOf(x, other));
/** @param {Any} x @param {Any} kind */
const isOf = (x, kind) => (isText(kind) ? KINDS[kind](x) : x instanceof kind);
/** `raise error from cause` @param {Any} error @param {Any} cause */
export const from = (error, cause) => Object.assign(error, { cause });
