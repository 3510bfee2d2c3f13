/** The tools, each in a layer of its own that is loaded where the tool is needed. */

import { TITLES } from "./made.js";

/** @param {string} name @returns {Promise<any>} what a tool declares; nothing where there is none of the name */
export async function toolOf(name) {
  if (!TITLES.some((/** @type {{name: string}} */ title) => title.name === name)) return undefined;
  return (await import(`./tool-${name}.js`)).TOOL;
}

/** @returns {Promise<Map<string, any>>} all of them, by their names */
export async function everyTool() {
  const names = TITLES.map((/** @type {{name: string}} */ title) => title.name);
  return new Map(await Promise.all(names.map(async (/** @type {string} */ name) => [name, await toolOf(name)])));
}

/** Load what a press may need, so that this page has all of its version before a newer one takes the files away. */
export async function loadRest() {
  await Promise.all([everyTool(), import("./more.js")]);
}
