/**
 * Gathers what a screen needs from the phone's own store: the same dict as webapp/pages/gather.py makes.
 * @typedef {Map<string, any>} Gathered
 * @typedef {{screen: string, names: Record<string, string>, query: Map<string, string>}} Place an address taken apart
 */

import { needed, sheets_behind } from "./core/follow.js";
import { entries, watch, worked } from "./local.js";
import { entries_named } from "./core/picks.js";
import { FACTORS, ROUTES, TITLES } from "./made.js";
import { toPython } from "./python.js";
import { everyTool, toolOf } from "./tools.js";

/** The fold is a layer of its own: it is loaded once a page needs it. @type {typeof import("./folding.js") | undefined} */
let fold;

/** Screens that do with the names of the tools, and with the one that they show. */
const NAMES_DO = new Set(["home", "tool", "help", "diagnostics"]);

/** Take an address apart; nothing where no kept page is. @param {URL | Location} address @returns {Place | undefined} */
export function placeOf(address) {
  for (const { pattern, screen } of ROUTES) {
    const found = new RegExp(pattern).exec(address.pathname);
    if (found) return { screen, names: { ...found.groups }, query: queryOf(address.search) };
  }
  return undefined;
}

/** As the server reads a query: the first of a name counts. @param {string} search @returns {Map<string, string>} */
function queryOf(search) {
  const query = new URLSearchParams(search);
  return new Map([...query.keys()].map((name) => [name, query.get(name) ?? ""]));
}

/**
 * @param {Place} place
 * @param {boolean} [first] whether an answer is waited for: what stands below it may be `lacking` then, and comes with
 *   the next look; so it is while nothing is typed
 * @returns {Promise<Gathered>}
 */
export async function gather(place, first = false) {
  const tools = NAMES_DO.has(place.screen) ? TITLES : [...(await everyTool()).values()];
  /** @type {Record<string, any>} */
  const nothing = { tools, factors: FACTORS, project: null, projects: [], worked: new Map(), first };
  const g = new Map(Object.entries(nothing));
  await GATHER[place.screen](g, place);
  return g;
}

/** @type {Record<string, (g: Gathered, place: Place) => Promise<unknown>>} */
const GATHER = {
  home: gatherAll,
  project: gatherPage,
  reading: gatherEntry,
  sheet: gatherEntry,
  part: gatherPart,
  glue: (g, { names }) => gatherProject(g, names.project),
  tool: gatherTool,
  source: gatherSource,
  origin: gatherOrigin,
  help: gatherHelp,
  round: gatherRound,
  diagnostics: async () => {},
};

/** @param {Gathered} g */
async function gatherAll(g) {
  const { summaries } = await folding();
  g.set("projects", summaries(toPython(await entries())));
}

async function folding() {
  fold ??= await import("./folding.js");
  return fold;
}

/** The project that was looked at last, so that a new entry alone is folded. @type {{project: string, state: any, read: Promise<void>} | undefined} */
let folded;
watch((put) => {
  const own = put?.filter((entry) => entry.project === folded?.project);
  if (folded && own) take(folded.state, own);
  else forgetFold();
});
addEventListener("pageshow", ({ persisted }) => persisted && forgetFold());

/** Another tab put something into the store: what is folded here is not all there is. */
export function forgetFold() {
  folded = undefined;
}

/** @param {any} state @param {any[]} own */
function take(state, own) {
  for (const entry of toPython(own)) fold?.add(state, entry);
}

/** @param {string} id @returns {Promise<any>} the project's state, read once */
async function stateOf(id) {
  const { start } = await folding();
  if (folded?.project !== id) {
    const state = start();
    folded = { project: id, state, read: entries(id).then((own) => take(state, own)) };
  }
  const { state, read } = folded;
  await read.catch((error) => {
    forgetFold(); // it is read anew at the next look
    throw error;
  });
  return state;
}

/** @param {Gathered} g @param {string} id */
async function gatherProject(g, id) {
  const [{ summary }, state] = await Promise.all([folding(), stateOf(id)]);
  const found = summary(state);
  if (found.get("id")) g.set("project", found);
}

/** @param {Gathered} g @param {Place} place */
async function gatherPage(g, { names }) {
  await gatherProject(g, names.project);
  await gatherWorked(g, heads(g));
}

/** The kept sheets that stand. @param {Gathered} g @returns {string[]} */
function heads(g) {
  const things = g.get("project")?.get("sheets") ?? [];
  return things.flatMap((/** @type {any} */ thing) => thing.get("heads").map((/** @type {any} */ head) => head.get("entry")));
}

/** @param {Gathered} g @param {Place} place */
async function gatherEntry(g, { names }) {
  g.set("entry", names.entry);
  await gatherProject(g, names.project);
  await gatherWorked(g, [names.entry]);
}

/** @param {Gathered} g @param {Place} place */
async function gatherRound(g, { names, query }) {
  g.set("entry", names.entry);
  g.set("typed", query);
  await gatherProject(g, names.project);
}

/** @param {Gathered} g @param {Place} place */
async function gatherPart(g, place) {
  g.set("entry", place.names.entry);
  await gatherPage(g, place);
}

/** @param {Gathered} g @param {Place} place */
async function gatherHelp(g, { query }) {
  g.set("tool", await toolOf(document.body.dataset.tool ?? ""));
  const project = query.get("project");
  if (project) await gatherProject(g, project);
}

/** @param {Gathered} g @param {Place} place */
async function gatherTool(g, place) {
  await gatherHelp(g, place);
  g.set("typed", place.query);
  const project = g.get("project");
  if (project === null) return place.query.size && !g.get("first") ? gatherAll(g) : g.set("lacking", true);
  await gatherWorked(g, sheets_behind(project, entries_named(place.query)));
}

/** @param {Gathered} g @param {Place} place */
async function gatherSource(g, place) {
  await gatherHelp(g, place);
  g.set("typed", place.query);
  const project = g.get("project");
  if (project !== null) await gatherWorked(g, [...heads(g), ...sheets_behind(project, entries_named(place.query))]);
}

/** @param {Gathered} g @param {Place} place */
async function gatherOrigin(g, { names }) {
  g.set("entry", names.entry).set("key", names.key);
  await gatherProject(g, names.project);
  const project = g.get("project");
  if (project === null) return;
  const { sheets_above } = await import("./more.js");
  await gatherWorked(g, sheets_above(project, names.entry));
}

/**
 * The kept sheets that are shown, and those that links lead to: what the server worked; what it has not worked yet
 * is worked here, so that it says its answer at once.
 * @param {Gathered} g @param {string[]} shown
 */
async function gatherWorked(g, shown) {
  const project = g.get("project");
  if (project === null) return;
  const names = [...new Set([...shown, ...needed(project)])];
  const found = new Map(await worked(names));
  const sheets = new Map(project.get("sheets").flatMap(itemsOf));
  for (const id of names) {
    if (found.has(id)) g.get("worked").set(id, toPython(found.get(id)));
    else if (sheets.has(id)) await workHere(g, sheets.get(id));
  }
}

/** @param {Map<string, any>} thing @returns {[string, Map<string, any>][]} each by its entry */
function itemsOf(thing) {
  return [...thing.get("heads"), ...thing.get("past")].map((item) => [item.get("entry"), item]);
}

/** @param {Gathered} g @param {Map<string, any>} sheet */
async function workHere(g, sheet) {
  const [{ sheet_of }, tools] = await Promise.all([import("./more.js"), everyTool()]);
  const outcome = sheet_of(sheet, tools, FACTORS);
  if (outcome.has("sheet")) g.get("worked").set(sheet.get("entry"), outcome);
}
