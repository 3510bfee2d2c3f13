/** Python's Fraction, for the translated core: numerator and denominator are ints as static/python.js has them. */
import { add, floordiv, mul, sub } from "./python_numbers.js";
import { Exact, TypeError, ZeroDivisionError, isInt } from "./python_values.js";

/** @typedef {number | bigint} Int */

/** The greatest common divisor, with the sign of d. @param {any} n @param {any} d @returns {any} */
function common(n, d) {
  let [found, rest] = [n, d];
  while (rest) [found, rest] = [rest, found % rest];
  return found < 0 !== d < 0 ? -found : found;
}

export class Fraction extends Exact {
  /** @param {any} [numerator] an int or a Fraction @param {any} [denominator] */
  constructor(numerator = 0, denominator = 1) {
    super();
    let [n, d] = [numerator, denominator];
    if (n instanceof Fraction || d instanceof Fraction) {
      const [over, under] = [whole(n), whole(d)];
      n = mul(over.numerator, under.denominator);
      d = mul(over.denominator, under.numerator);
    }
    if (!isInt(n) || !isInt(d)) throw new TypeError("a Fraction is made of ints");
    if (d == 0) throw new ZeroDivisionError(`Fraction(${n}, 0)`);
    if (typeof n !== "number" || typeof d !== "number") [n, d] = [BigInt(n), BigInt(d)];
    const by = common(n, d);
    /** @type {any} */
    this.numerator = add(n / by, 0);
    /** @type {any} */
    this.denominator = add(d / by, 0);
  }
  /** The number x as a Fraction, nothing when it is none. @param {any} x @returns {Fraction | undefined} */
  lift(x) { return x instanceof Fraction ? x : isInt(x) ? new Fraction(x) : undefined; }
  /** @param {Fraction} o */
  add(o) {
    const [left, right] = [mul(this.numerator, o.denominator), mul(o.numerator, this.denominator)];
    return new Fraction(add(left, right), mul(this.denominator, o.denominator));
  }
  /** @param {Fraction} o */
  sub(o) {
    const [left, right] = [mul(this.numerator, o.denominator), mul(o.numerator, this.denominator)];
    return new Fraction(sub(left, right), mul(this.denominator, o.denominator));
  }
  /** @param {Fraction} o */
  mul(o) { return new Fraction(mul(this.numerator, o.numerator), mul(this.denominator, o.denominator)); }
  /** @param {Fraction} o */
  div(o) { return new Fraction(mul(this.numerator, o.denominator), mul(this.denominator, o.numerator)); }
  /** @param {Fraction} o @returns {Int} */
  floordiv(o) { return floordiv(mul(this.numerator, o.denominator), mul(this.denominator, o.numerator)); }
  /** @param {Fraction} o */
  mod(o) { return this.sub(o.mul(new Fraction(this.floordiv(o)))); }
  /** @param {Fraction} [o] */
  equals(o) { return o !== undefined && this.numerator === o.numerator && this.denominator === o.denominator; }
  /** @param {Fraction} o */
  compare(o) {
    const [left, right] = [mul(this.numerator, o.denominator), mul(o.numerator, this.denominator)];
    return left < right ? -1 : left > right ? 1 : 0;
  }
  /** What int() gives: the part before the point. @returns {Int} */
  whole() {
    const down = floordiv(this.numerator, this.denominator);
    return down < 0 && this.denominator !== 1 ? add(down, 1) : down;
  }
  toString() { return this.denominator === 1 ? `${this.numerator}` : `${this.numerator}/${this.denominator}`; }
}
/** @param {any} x @returns {Fraction} */
const whole = (x) => {
  const lifted = Fraction.prototype.lift(x);
  if (!lifted) throw new TypeError("a Fraction is made of ints");
  return lifted;
};
