/**
 * What the translated core needs of Python. Made by webapp/phone/translate.py are only calls of these;
 * an int is a number while it is safe and a BigInt beyond, a tuple is an Array of its own class, a dict a Map.
 * @typedef {any} Any what Python would check as it runs
 */

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
    Exception.prototype.__init__.apply(this, args); // as Python's __new__ does, before an __init__ that may not pass them on
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

const isSafe = Number.isSafeInteger;
/** @param {Any} x @returns {boolean} */
const isBool = (x) => typeof x === "boolean";
/** @param {Any} x @returns {boolean} */
const isInt = (x) => typeof x === "number" || typeof x === "bigint" || isBool(x);
/** @param {Any} x @returns {boolean} */
const isText = (x) => typeof x === "string";
/** @param {Any} x @returns {boolean} */
const isTuple = (x) => x instanceof Tuple;
const isArray = Array.isArray;
/** @param {bigint} n */
const settle = (n) => (isSafe(Number(n)) ? Number(n) : n);
/** @param {Any} x */
const kind = (x) =>
  x === null ? "None" : isBool(x) ? "bool" : isInt(x) ? "int" : isText(x) ? "str" : x instanceof Map ? "dict"
    : isTuple(x) ? "tuple" : isArray(x) ? "list" : x?.constructor?.name ?? typeof x;
/** @param {string} what @returns {never} */
const outside = (what) => { throw new Outside(what); };
/** @param {string} what @param {...Any} values @returns {never} */
const refuse = (what, ...values) => { throw new TypeError(`${what}: ${values.map(kind).join(", ")}`); };

/* Operators. Two numbers first, because nearly all are; then Fractions, then the rest. */

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
  LIST.extend(a, b);
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
  LIST.extend(a, more);
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
  if (isArray(a)) return isArray(b) && isTuple(a) === isTuple(b) && a.length === b.length && a.every((x, i) => eq(x, b[i]));
  if (a instanceof Map) return b instanceof Map && a.size === b.size && [...a].every(([key, x]) => b.has(key) && eq(x, b.get(key)));
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
/** `a is b`; of numbers, texts and tuples Python itself may say either. @param {Any} a @param {Any} b @returns {boolean} */
export function same(a, b) {
  const loose = (/** @type {Any} */ x) => isText(x) || isTuple(x) || x instanceof Exact || (isInt(x) && !isBool(x));
  return loose(a) && kind(a) === kind(b) ? outside(`is between two of ${kind(a)}`) : a === b;
}
/** `a in b` @param {Any} a @param {Any} b @returns {boolean} */
export function has(a, b) {
  if (isText(b)) return isText(a) ? b.includes(a) : refuse("in a text", a);
  if (b instanceof Map) return b.has(toKey(a));
  for (const x of iter(b)) if (eq(a, x)) return true;
  return false;
}
/** Whether Python takes x for true. @param {Any} x @returns {boolean} */
export const t = (x) =>
  isBool(x) ? x : isArray(x) ? x.length > 0 : x instanceof Map ? x.size > 0 : x instanceof Exact ? !eq(x, 0) : x instanceof Value || Boolean(x);
/** @param {Any} a @param {() => Any} b */
export const and = (a, b) => (t(a) ? b() : a);
/** @param {Any} a @param {() => Any} b */
export const or = (a, b) => (t(a) ? a : b());

/* Containers. A text is one of code points, as in Python. */

const WIDE = /[\ud800-\udfff]/;
/** @param {string} text @returns {Any} */
const points = (text) => (WIDE.test(text) ? [...text] : text);
/** The place in code points of a place in code units. @param {string} text @param {number} at */
const pointAt = (text, at) => (at < 0 ? at : points(text.slice(0, at)).length);
/** @param {Any} x @returns {Iterable<Any>} */
export function iter(x) {
  if (isArray(x) || isText(x)) return x;
  if (x instanceof Map) return x.keys();
  return x !== null && typeof x === "object" && Symbol.iterator in x ? x : refuse("not a row of things", x);
}
/** The items of a dict where each is taken apart at once. @param {Any} x @returns {Iterable<[Any, Any]>} */
export const pairs = (x) => (x instanceof Map ? x : m(x, "items"));
/** What stands behind ** in a dict. @param {Any} x @returns {Map<Any, Any>} */
export const mapping = (x) => (x instanceof Map ? x : refuse("no dict", x));
/** @param {Any} x @returns {number} */
export const len = (x) => (isText(x) ? points(x).length : isArray(x) ? x.length : x instanceof Map ? x.size : refuse("no length", x));
/** A key as a Map takes it. @param {Any} x */
export function toKey(x) {
  if (isBool(x)) return Number(x);
  if (isText(x) || isInt(x) || x === null) return x;
  return isArray(x) && !isTuple(x) || x instanceof Map ? refuse("unhashable", x) : outside(`a key of ${kind(x)}`);
}
/** @param {Any} x @param {Any} i */
const place = (x, i) => {
  if (!isInt(i)) refuse("no index", i);
  const at = i < 0 ? Number(i) + x.length : Number(i);
  if (!(at >= 0 && at < x.length)) throw new IndexError(`${i} of ${x.length}`);
  return at;
};
/** `x[i]` @param {Any} x @param {Any} i @returns {Any} */
export function at(x, i) {
  if (x instanceof Map) {
    const found = x.get(toKey(i));
    if (found === undefined) throw new KeyError(i);
    return found;
  }
  const row = isText(x) ? points(x) : isArray(x) ? x : refuse("no subscript", x);
  return row[place(row, i)];
}
/** `x[i] = value`, in Python's order of evaluation. @param {Any} value @param {Any} x @param {Any} i */
export function put(value, x, i) {
  if (x instanceof Map) x.set(toKey(i), value);
  else if (isArray(x) && !isTuple(x)) x[place(x, i)] = value;
  else refuse("no subscript to set", x);
}
/** `x[from:to]` @param {Any} x @param {Any} [from] @param {Any} [to] @returns {Any} */
export function slice(x, from = null, to = null) {
  const row = isText(x) ? points(x) : isArray(x) ? x : refuse("no slice", x);
  const [first, last] = [from, to].map((bound) => bound === null ? undefined : isInt(bound) ? Number(bound) : refuse("no bound", bound));
  const part = row.slice(first, last);
  return isText(x) && isArray(part) ? part.join("") : part;
}
/** The row x, when it has as many as the targets; a target that is a tuple has a shape of its own. @param {Any} x @param {Any} shape @returns {Any[]} */
export function unpack(x, shape) {
  if (isArray(x) && x.length === shape) return x;
  const row = isArray(x) ? x : [...iter(x)], count = isArray(shape) ? shape.length : shape;
  if (row.length !== count) throw new ValueError(`${count} values wanted, not ${row.length}`);
  return isArray(shape) ? Array.from(row, (part, i) => shape[i] ? unpack(part, shape[i]) : part) : row;
}
/** The row x as the last arguments of a call. @param {Any} x @param {number} least @param {number} most */
export function spread(x, least, most) {
  const row = list(x);
  if (row.length < least || row.length > most) throw new TypeError(`${least} to ${most} arguments wanted, not ${row.length}`);
  return row;
}
/** A tuple of values, filled by hand: Array.of is twenty times slower for a class of its own. @param {...Any} values @returns {Any} */
export function tup(...values) {
  const made = new Tuple();
  for (let i = 0; i < values.length; i++) made[i] = values[i];
  return made;
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
export const dict = (x = []) => new Map(x instanceof Map ? x : list(x).map((pair) => { const [key, value] = unpack(pair, 2); return [toKey(key), value]; }));
/** @param {Any} x @param {Any} [key] @param {boolean} [reverse] */
export function sorted(x, key = null, reverse = false) {
  const sign = t(reverse) ? -1 : 1;
  const rows = list(x).map((value) => ({ value, by: key ? key(value) : value }));
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
  if (/^[+-]?[0-9]+$/.test(x)) return x.length < 16 ? Number(x) : settle(x[0] === "-" ? -BigInt(x.slice(1)) : BigInt(x.replace("+", "")));
  if (/[_\s]|[^ -~]/.test(x)) outside("int() of a text with more than ASCII digits");
  throw new ValueError(`int() of ${x}`);
}
/** @type {Record<string, (x: Any) => boolean>} */
const KINDS = { int: isInt, bool: isBool, str: isText, dict: (x) => x instanceof Map, tuple: isTuple, list: (x) => isArray(x) && !isTuple(x) };
/** @param {Any} x @param {...Any} kinds a name of Python's own or a class */
export const isinstance = (x, ...kinds) => kinds.some((one) => (isText(one) ? KINDS[one](x) : x instanceof one));
/** `raise error from cause` @param {Any} error @param {Any} cause */
export const from = (error, cause) => Object.assign(error, { cause });

/* Methods. */

/** @param {string} text @param {string} chars @param {boolean} left @param {boolean} right */
function strip(text, chars, left, right) {
  const row = [...text], off = new Set(chars);
  let [first, last] = [0, row.length];
  while (left && first < last && off.has(row[first])) first++;
  while (right && last > first && off.has(row[last - 1])) last--;
  return row.slice(first, last).join("");
}
/** @param {Any} part */
const some = (part) => (!isText(part) ? refuse("text wanted", part) : part || outside("an empty text to look for"));
/** @param {Any} s @param {Any} ends @param {"startsWith"|"endsWith"} way */
const fits = (s, ends, way) => (isTuple(ends) ? ends : [ends]).some((/** @type {Any} */ end) => isText(end) ? s[way](end) : refuse("text wanted", end));
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
  append: (x, value) => (x.push(value), null),
  extend: (x, values) => { for (const value of list(values)) x.push(value); return null; },
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
  get: (x, key, none = null) => { const found = x.get(toKey(key)); return found === undefined ? none : found; },
  items: (x) => Array.from(x, ([key, value]) => tup(key, value)),
  keys: (x) => [...x.keys()],
  values: (x) => [...x.values()],
  setdefault: (x, key, value = null) => { if (!x.has(toKey(key))) x.set(toKey(key), value); return x.get(toKey(key)); },
  pop: (x, key, none) => {
    const found = x.has(toKey(key)) ? x.get(toKey(key)) : none;
    if (found === undefined) throw new KeyError(key);
    x.delete(toKey(key));
    return found;
  },
  update: (x, other) => { for (const [key, value] of dict(other)) x.set(key, value); return null; },
};
/** `x.name(...args)` where text, lists or dicts have a method of the name. @param {Any} x @param {string} name @param {...Any} args @returns {Any} */
export function m(x, name, ...args) {
  const table = isText(x) ? TEXT : x instanceof Map ? DICT : isArray(x) ? LIST : null;
  const method = table ? (!isTuple(x) || name === "index" || name === "count") && table[name] : x?.[name];
  if (!method) throw new AttributeError(`${kind(x)} has no ${name}`);
  return table ? method(x, ...args) : x[name](...args);
}

/* The boundary between the core and what is around it. */

/** Plain data as the core takes it: objects become dicts, all the way down. @param {Any} plain @returns {Any} */
export function toPython(plain) {
  if (plain === undefined) return null;
  if (isArray(plain)) return isTuple(plain) ? plain : plain.map(toPython);
  if (plain === null || Object.getPrototypeOf(plain) !== Object.prototype) return plain;
  return new Map(Object.entries(plain).filter(([, value]) => value !== undefined).map(([key, value]) => [key, toPython(value)]));
}
/** The core's data as plain data: dicts become objects. @param {Any} value @returns {Any} */
export function fromPython(value) {
  if (isArray(value)) return Array.from(value, fromPython);
  return value instanceof Map ? Object.fromEntries(Array.from(value, ([key, inner]) => [key, fromPython(inner)])) : value;
}
/** The same characters as Python's json.dumps(value, ensure_ascii=False, separators=(",", ":")). @param {Any} value @returns {string} */
export function json(value) {
  if (value === null || isBool(value) || isText(value)) return JSON.stringify(value);
  if (isInt(value)) return isSafe(value) || typeof value === "bigint" ? String(value) : outside("a float");
  if (isArray(value)) return `[${Array.from(value, json).join(",")}]`;
  if (!(value instanceof Map)) return refuse("not for JSON", value);
  return `{${Array.from(value, ([key, inner]) => `${JSON.stringify(isText(key) ? key : json(key))}:${json(inner)}`).join(",")}}`;
}
