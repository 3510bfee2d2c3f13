/** Python values to and from the browser's engine, as tests/engine.py writes them. */
import * as $ from "./python.js";
import { Fraction } from "./fraction.js";

const modules = new Map();
async function load(address) {
  if (!modules.has(address)) modules.set(address, await import(address));
  return modules.get(address);
}
export async function taken(value, core) {
  if (Array.isArray(value)) return Promise.all(value.map((item) => taken(item, core)));
  if (value === null || typeof value !== "object") return value;
  const [[kind, of]] = Object.entries(value);
  if (kind === "int") return BigInt(of);
  if (kind === "fraction") return new Fraction($.int(of[0]), $.int(of[1]));
  if (kind === "tuple") return $.tuple(await taken(of, core));
  if (kind === "dict") return new Map(await taken(of, core));
  if (kind === "function") return (await load(`${core}/${of[0]}.js`))[of[1]];
  const [module, name, fields] = of;
  return new (await load(`${core}/${module}.js`))[name](...(await taken(fields, core)));
}
export function written(value) {
  if (value === undefined) throw new Error("undefined is no Python value");
  if (typeof value === "number" && !Number.isSafeInteger(value)) throw new Error(`${value} is no Python value here`);
  if (value === null || ["string", "boolean", "number"].includes(typeof value)) return value;
  if (typeof value === "bigint") return { int: String(value) };
  if (value instanceof Fraction) return { fraction: [String(value.numerator), String(value.denominator)] };
  if (value instanceof $.Tuple) return { tuple: Array.from(value, written) };
  if (value instanceof Map) return { dict: Array.from(value, (pair) => pair.map(written)) };
  if (Array.isArray(value)) return value.map(written);
  if (typeof value === "function") return { function: ["", named(value)] };
  if (value instanceof $.Value) return { value: ["", named(value.constructor), Object.values(value).map(written)] };
  throw new Error(`${value?.constructor?.name} is no Python value here`);
}
/** A name that two modules have says its module behind a dollar. */
const named = ({ name }) => name.split("$")[0];
function raised(error) {
  if (!(error instanceof $.Exception)) throw error;
  const own = Object.entries(error).filter(([name]) => !["args", "message", "cause"].includes(name));
  const text = error instanceof $.KeyError ? "" : $.str(error);
  return { raises: named(error.constructor), text, has: Object.fromEntries(own.map(([name, value]) => [name, written(value)])) };
}
/** The outcome of each call: what it gives, or what it raises. */
export async function outcomes(core, calls) {
  const found = [];
  for (const [module, name, args] of calls) {
    const work = (await load(`${core}/${module}.js`))[name];
    if (!work) throw new Error(`${module} has no ${name}`);
    const values = await taken(args, core);
    try {
      found.push({ gives: written(work(...values)) });
    } catch (error) {
      try {
        found.push(raised(error));
      } catch {
        found.push({ raises: "no Python error", text: String(error?.stack ?? error), has: {} });
      }
    }
  }
  return found;
}
