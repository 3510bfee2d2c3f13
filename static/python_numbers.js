/** Python's operators and comparisons: two numbers first, because nearly all are; then Fractions, then the rest. */
import {
  Exact, Tuple, Value, ZeroDivisionError, isArray, isBool, isInt, isSafe, isText, isTuple, iter, kind, outside,
  refuse, settle, tup,
} from "./python_values.js";

/** @typedef {any} Any what Python would check as it runs */

/**
 * @param {"add"|"sub"|"mul"|"div"|"floordiv"|"mod"} name @param {Any} a @param {Any} b
 * @param {((a: bigint, b: bigint) => bigint)=} big
 * @returns {Any}
 */
function operate(name, a, b, big) {
  const number = a instanceof Exact ? a : b instanceof Exact ? b : null;
  if (number) {
    const left = /** @type {Any} */ (number).lift(a), right = /** @type {Any} */ (number).lift(b);
    if (left && right) return left[name](right);
  } else if (isInt(a) && isInt(b)) {
    return big ? settle(big(BigInt(a), BigInt(b))) : outside("int / int is a float");
  }
  return refuse(name, a, b);
}
/** @param {Any} a @param {Any} b @returns {Any} */
export function add(a, b) {
  if (typeof a === "number" && typeof b === "number") {
    const sum = a + b;
    if (isSafe(sum)) return sum;
  }
  if (isText(a) && isText(b)) return a + b;
  if (isArray(a) && isArray(b) && isTuple(a) === isTuple(b)) return a.concat(b);
  return operate("add", a, b, (x, y) => x + y);
}
/** `a += b`: a list grows in place. @param {Any} a @param {Any} b @returns {Any} */
export function grow(a, b) {
  if (!isArray(a) || isTuple(a)) return add(a, b);
  for (const value of [...iter(b)]) a.push(value);
  return a;
}
/** @param {Any} a @param {Any} b @returns {Any} */
export function sub(a, b) {
  if (typeof a === "number" && typeof b === "number") {
    const rest = a - b;
    if (isSafe(rest)) return rest;
  }
  return operate("sub", a, b, (x, y) => x - y);
}
/** @param {Any} x @param {Any} times */
const repeat = (x, times) => {
  const count = Math.max(0, Number(times));
  if (isText(x)) return x.repeat(count);
  const out = isTuple(x) ? new Tuple() : [];
  for (let i = 0; i < count; i++) for (const value of x) out.push(value);
  return out;
};
/** @param {Any} a @param {Any} b @returns {Any} */
export function mul(a, b) {
  if (typeof a === "number" && typeof b === "number") {
    const product = a * b;
    if (isSafe(product)) return product;
  }
  if ((isText(a) || isArray(a)) && isInt(b)) return repeat(a, b);
  if ((isText(b) || isArray(b)) && isInt(a)) return repeat(b, a);
  return operate("mul", a, b, (x, y) => x * y);
}
/** `a *= b`: a list, too, changes in place. @param {Any} a @param {Any} b @returns {Any} */
export function regrow(a, b) {
  if (!isArray(a) || isTuple(a)) return mul(a, b);
  const more = mul(a, b);
  a.length = 0;
  for (const value of more) a.push(value);
  return a;
}
/** @param {Any} a @param {Any} b @returns {Any} */
export const div = (a, b) => operate("div", a, b);
/** @param {Any} b */
const nonzero = (b) => { if (b == 0) throw new ZeroDivisionError("division by zero"); };
/** @param {Any} a @param {Any} b @returns {Any} */
export function floordiv(a, b) {
  if (isInt(b)) nonzero(b);
  if (typeof a === "number" && typeof b === "number") return Math.floor(a / b);
  return operate("floordiv", a, b, (x, y) => x / y - (x % y && x < 0n !== y < 0n ? 1n : 0n));
}
/** @param {Any} a @param {Any} b @returns {Any} */
export function mod(a, b) {
  if (isText(a)) outside("text % values");
  if (isInt(b)) nonzero(b);
  if (typeof a === "number" && typeof b === "number") {
    const rest = a % b;
    return rest && rest < 0 !== b < 0 ? rest + b : rest;
  }
  return operate("mod", a, b, (x, y) => { const rest = x % y; return rest && rest < 0n !== y < 0n ? rest + y : rest; });
}
/** @param {Any} a @param {Any} b */
export const divmod = (a, b) => tup(floordiv(a, b), mod(a, b));
/** @param {Any} x @returns {Any} */
export const neg = (x) => (isInt(x) || x instanceof Exact ? sub(0, x) : refuse("-", x));
/** @param {Any} x @returns {Any} */
export const abs = (x) => (lt(x, 0) ? neg(x) : add(0, x));

/* Comparison. */

/** @param {Any} a @param {Any} b @returns {boolean} */
export function eq(a, b) {
  if (a === b) return true;
  if (isText(a) || a === null) return false;
  if (a instanceof Exact || b instanceof Exact) {
    const number = /** @type {Any} */ (a instanceof Exact ? a : b);
    return (number.lift(a)?.equals(number.lift(b))) ?? false;
  }
  if (isInt(a) && isInt(b)) return a == b;
  if (isArray(a)) {
    if (!isArray(b) || isTuple(a) !== isTuple(b) || a.length !== b.length) return false;
    return a.every((x, i) => eq(x, b[i]));
  }
  if (a instanceof Map) {
    if (!(b instanceof Map) || a.size !== b.size) return false;
    return [...a].every(([key, x]) => b.has(key) && eq(x, b.get(key)));
  }
  return a instanceof Value && a.constructor === b?.constructor
    && Object.keys(a).every((name) => eq(/** @type {Any} */ (a)[name], b[name]));
}
/** @param {Any} a @param {Any} b */
export const ne = (a, b) => !eq(a, b);
/** A code unit's place in the order of code points. @param {number} unit */
const rank = (unit) => (unit >= 0xe000 ? unit - 0x800 : unit >= 0xd800 ? unit + 0x2000 : unit);
/** @param {string} a @param {string} b */
function compareText(a, b) {
  const shorter = Math.min(a.length, b.length);
  for (let i = 0; i < shorter; i++) {
    const step = rank(a.charCodeAt(i)) - rank(b.charCodeAt(i));
    if (step) return step;
  }
  return a.length - b.length;
}
/** Less than 0, 0, or more, as a stands before, with or after b. @param {Any} a @param {Any} b @returns {number} */
function compare(a, b) {
  if (isInt(a) && isInt(b)) return a < b ? -1 : a > b ? 1 : 0;
  if (isText(a) && isText(b)) return compareText(a, b);
  const number = /** @type {Any} */ (a instanceof Exact ? a : b instanceof Exact ? b : null);
  const left = number?.lift(a), right = number?.lift(b);
  if (left && right) return left.compare(right);
  if (!isArray(a) || !isArray(b) || isTuple(a) !== isTuple(b)) return refuse("no order between", a, b);
  const at = a.findIndex((x, i) => i >= b.length || !eq(x, b[i]));
  return at < 0 || at >= b.length ? a.length - b.length : compare(a[at], b[at]);
}
/** @param {Any} a @param {Any} b */
export const lt = (a, b) => (typeof a === "number" && typeof b === "number" ? a < b : compare(a, b) < 0);
/** @param {Any} a @param {Any} b */
export const gt = (a, b) => lt(b, a);
/** @param {Any} a @param {Any} b */
export const le = (a, b) => (typeof a === "number" && typeof b === "number" ? a <= b : compare(a, b) <= 0);
/** @param {Any} a @param {Any} b */
export const ge = (a, b) => le(b, a);
/**
 * `a is b`; of numbers, texts and tuples Python itself may say either.
 * @param {Any} a @param {Any} b @returns {boolean}
 */
export function same(a, b) {
  const loose = (/** @type {Any} */ x) => isText(x) || isTuple(x) || x instanceof Exact || (isInt(x) && !isBool(x));
  return loose(a) && kind(a) === kind(b) ? outside(`is between two of ${kind(a)}`) : a === b;
}
/** Whether Python takes x for true. @param {Any} x @returns {boolean} */
export const t = (x) =>
  isBool(x) ? x : isArray(x) ? x.length > 0 : x instanceof Map ? x.size > 0
    : x instanceof Exact ? !eq(x, 0) : x instanceof Value || Boolean(x);
/** @param {Any} a @param {() => Any} b */
export const and = (a, b) => (t(a) ? b() : a);
/** @param {Any} a @param {() => Any} b */
export const or = (a, b) => (t(a) ? a : b());
