/**
 * Python's values and errors, for the translated core: an int is a number while it is safe and a BigInt beyond,
 * a tuple is an Array of its own class, a dict a Map.
 */
/** @typedef {any} Any what Python would check as it runs */

/** What cannot be said the same way in both languages: no Python error, so nothing in the core catches it. */
export class Outside extends Error {}
/** A tuple: an array that no list equals. */
export class Tuple extends Array {}
/** The base of the frozen dataclasses: equal when class and fields are. */
export class Value {}
/** The base of numbers that are no ints (static/fraction.js). */
export class Exact {}

/** Python's errors; `__init__` is called as in Python, so that an error class may do more than pass on its text. */
export class Exception extends Error {
  /** @param {...Any} args */
  constructor(...args) {
    super();
    // As Python's __new__ does, before an __init__ that may not pass them on.
    Exception.prototype.__init__.apply(this, args);
    this.__init__(...args);
  }
  /** @param {...Any} args */
  __init__(...args) {
    this.args = tup(...args);
    this.message = args.filter((part) => typeof part === "string").join(" ");
  }
}
export class ValueError extends Exception {}
export class TypeError extends Exception {}
export class AttributeError extends Exception {}
export class LookupError extends Exception {}
export class KeyError extends LookupError {}
export class IndexError extends LookupError {}
export class ArithmeticError extends Exception {}
export class ZeroDivisionError extends ArithmeticError {}

export const isSafe = Number.isSafeInteger;
/** @param {Any} x @returns {boolean} */
export const isBool = (x) => typeof x === "boolean";
/** @param {Any} x @returns {boolean} */
export const isInt = (x) => typeof x === "number" || typeof x === "bigint" || isBool(x);
/** @param {Any} x @returns {boolean} */
export const isText = (x) => typeof x === "string";
/** @param {Any} x @returns {boolean} */
export const isTuple = (x) => x instanceof Tuple;
export const isArray = Array.isArray;
/** @param {bigint} n */
export const settle = (n) => (isSafe(Number(n)) ? Number(n) : n);
/** @param {Any} x */
export const kind = (x) =>
  x === null ? "None" : isBool(x) ? "bool" : isInt(x) ? "int" : isText(x) ? "str" : x instanceof Map ? "dict"
    : isTuple(x) ? "tuple" : isArray(x) ? "list" : x?.constructor?.name ?? typeof x;
/** @param {string} what @returns {never} */
export const outside = (what) => { throw new Outside(what); };
/** @param {string} what @param {...Any} values @returns {never} */
export const refuse = (what, ...values) => { throw new TypeError(`${what}: ${values.map(kind).join(", ")}`); };
/** @param {Any} x @returns {Iterable<Any>} */
export function iter(x) {
  if (isArray(x) || isText(x)) return x;
  if (x instanceof Map) return x.keys();
  return x !== null && typeof x === "object" && Symbol.iterator in x ? x : refuse("not a row of things", x);
}
/**
 * A tuple of values, filled by hand: Array.of is twenty times slower for a class of its own.
 * @param {...Any} values @returns {Any}
 */
export function tup(...values) {
  const made = new Tuple();
  for (let i = 0; i < values.length; i++) made[i] = values[i];
  return made;
}
