/**
 * A kept screen on the phone: reads the address, gathers, works, and fills the page. What the server drew
 * stays until the first exchange is through; from then on the phone draws the same characters.
 */

import { noteFault } from "./errors.js";
import * as views from "./core/view.js";
import { draw, drawQuickly } from "./draw.js";
import { fillFields, followFields, hint, judge } from "./form.js";
import { gather, placeOf } from "./gather.js";
import { putBack } from "./half.js";
import { fillCalled, fillForms, takeOver } from "./keep.js";
import { standing } from "./local.js";
import { noticeLost } from "./lost.js";
import { begin, tell } from "./pace.js";
import { followPuts } from "./puts.js";
import { showRows } from "./rows.js";
import "./unsent.js";
import { keepOffline } from "./update.js";

/** @typedef {import("./gather.js").Gathered} Gathered */

const main = /** @type {HTMLElement} */ (document.getElementById("main"));
const place = placeOf(location);
const drawnByServer = main.hasChildNodes();
const NO_STORE = "this browser lets nothing be kept here";
const OLDER = "this page is older than what is kept here: load it again";

/** What was gathered last. @type {Gathered | undefined} */
let held;
/** Whether the phone has taken the page over from the server. */
let taken = false;
let turn = 0;

/** Gather anew and draw. */
async function show() {
  if (!place) return;
  const mine = ++turn;
  const g = await gather(place);
  if (mine !== turn) return; // something newer is on its way
  held = g;
  speak(g);
  paint(g);
  fillForms(g, place);
  if (!taken) takeOver(() => held, show);
  taken = true;
  document.documentElement.classList.add("ready");
}

/** Let the page say what its project is measured in: the pad has its keys by it. @param {Gathered} g */
function speak(g) {
  for (const name of ["unit", "graduation"]) document.body.dataset[name] = g.get("project")?.get(name) ?? "";
}

/** @param {Gathered} g @param {(place: Element, part: string, view: any) => void} put all at once, or the answer before the rest */
function paint(g, put = draw) {
  const screen = document.body.dataset.screen ?? "";
  const view = /** @type {any} */ (views)[screen](g);
  hint(view);
  if (screen !== "tool" || judge(view)) put(main, screen, view);
  const heading = main.querySelector("h1")?.textContent;
  if (heading) document.title = heading === "Shoulderline" ? heading : `${heading}, Shoulderline`;
}

/** What was typed changed: all else that was gathered still holds. @param {Map<string, string>} typed */
function retype(typed) {
  if (!held || !place) return;
  place.query = typed;
  held = new Map(held).set("typed", typed);
  paint(held, drawQuickly);
}

/** After each exchange: takes the page over, or draws what is new. @param {string} outcome @param {boolean} news */
async function exchanged(outcome, news) {
  if (taken ? news : outcome === "through" || (await standing()).cursor > 0) await show();
}

/** Without a store: a page that the server drew still keeps by its forms, and says that nothing stays here. @param {unknown} error */
function without(error) {
  noteFault(error);
  console.warn(error);
  const words = error instanceof DOMException && error.name === "VersionError" ? OLDER : NO_STORE;
  const state = document.getElementById("state");
  if (state) state.textContent = drawnByServer ? `${words}; all goes to the server` : words;
  if (!drawnByServer) draw(main, "missing", new Map([["missing", `${words}.`]]));
}

async function open() {
  if (!place) return;
  noticeLost().catch(() => {}); // a store that cannot be read is said below
  fillFields(place.query);
  fillCalled(place);
  putBack(place);
  showRows();
  followPuts();
  held = await gather(place);
  speak(held);
  followFields(retype, drawnByServer);
  if (!drawnByServer) await show();
  await tell();
  begin(exchanged);
}

// A page that is left before these have come would say so by an error; fields take any keyboard without the pad.
if (document.getElementById("standing")) import("./diagnostics.js").catch(() => undefined);
if (document.getElementById("pad")) import("./pad.js").catch(() => undefined);
keepOffline();
open().catch(without);
