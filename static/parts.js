/**
 * Renders the macros of templates/parts.html, walked into a tree by webapp/phone/parts.py. What is put is
 * escaped as Jinja escapes it, and a view is asked for truth as Python asks.
 *
 * @typedef {Map<string, any>} View
 * @typedef {(string | any[])[]} Tree
 * @typedef {Record<string, {args: string[], body: Tree}>} Parts
 * @typedef {Map<string, any>} Scope
 */

/** @type {Record<string, string>} */
const CODES = { "&": "&amp;", "<": "&lt;", ">": "&gt;", "'": "&#39;", '"': "&#34;" };

/** What Python calls the values that are no text. @type {Map<any, string>} */
const NAMES = new Map([[undefined, ""], [null, "None"], [true, "True"], [false, "False"]]);

/** @param {any} value @returns {string} */
function escape(value) {
  const text = NAMES.get(value) ?? String(value);
  return text.replace(/[&<>'"]/g, (sign) => CODES[sign]);
}

/** @param {string[]} path @param {Scope} scope @returns {any} */
function find(path, scope) {
  let value = /** @type {any} */ (scope);
  for (const name of path) value = step(value, name, path);
  return value;
}

/** @param {any} value @param {string} name @param {string[]} path @returns {any} */
function step(value, name, path) {
  if (value instanceof Map) return value.get(name);
  if (value === null) return undefined;
  throw new TypeError(`${path.join(".")}: there is nothing to look for ${name} in`);
}

/** Truth as Python has it. @param {any} value @returns {boolean} */
function holds(value) {
  if (Array.isArray(value)) return value.length > 0;
  if (value instanceof Map) return value.size > 0;
  return Boolean(value);
}

/** What is missing has nothing to go through. @param {any[] | undefined} value @returns {any[]} */
function listed(value) {
  return value === undefined ? [] : value;
}

/** @type {Record<string, (parts: Parts, scope: Scope, ...rest: any[]) => string>} */
const BRANCHES = {
  put: (_, scope, path) => escape(find(path, scope)),
  call: (parts, scope, macro, ...paths) =>
    render(parts, macro, ...paths.map((/** @type {string[]} */ path) => find(path, scope))),
  if: (parts, scope, path, yes, no) => walk(parts, holds(find(path, scope)) ? yes : no, scope),
  for: (parts, scope, name, path, body) =>
    listed(find(path, scope))
      .map((each) => walk(parts, body, new Map(scope).set(name, each)))
      .join(""),
};

/** @param {Parts} parts @param {Tree} tree @param {Scope} scope @returns {string} */
function walk(parts, tree, scope) {
  return tree
    .map((branch) => (typeof branch === "string" ? branch : BRANCHES[branch[0]](parts, scope, ...branch.slice(1))))
    .join("");
}

/**
 * Render a macro.
 * @param {Parts} parts
 * @param {string} name
 * @param {...View} values one for each argument
 * @returns {string}
 */
export function render(parts, name, ...values) {
  const { args, body } = parts[name];
  return walk(parts, body, new Map(args.map((argument, at) => [argument, values[at]])));
}
