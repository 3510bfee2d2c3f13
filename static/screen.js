/**
 * A kept screen on the phone: reads the address, gathers, works, and fills the page. What the server drew
 * stays until the first exchange is through; from then on the phone draws the same characters.
 */

import { noteFault } from "./errors.js";
import { diagnostics, home, tool_alone } from "./core/view.js";
import { draw, drawAnswer, drawQuickly } from "./draw.js";
import { fillFields, followFields, hint, judge } from "./form.js";
import { forgetFold, gather, placeOf } from "./gather.js";
import { putBack } from "./half.js";
import { fillCalled, fillForms, fillPlace, takeOver } from "./keep.js";
import { standing } from "./local.js";
import { noticeLost } from "./lost.js";
import { begin, tell } from "./pace.js";
import { followPuts } from "./puts.js";
import "./unsent.js";
import { keepOffline } from "./update.js";

/** @typedef {import("./gather.js").Gathered} Gathered */

/** What each screen says; the other screens are in a layer that their pages load. @type {Record<string, (g: Gathered) => any>} */
let views = { diagnostics, home, tool: tool_alone };
/** What goes from place to place on the page of a round. @type {typeof import("./round.js") | undefined} */
let round;
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

/** Gather anew and draw; at first what was gathered already. @param {Gathered} [gathered] */
async function show(gathered) {
  if (!place) return;
  const mine = ++turn;
  const g = gathered ?? (await gather(place));
  if (mine !== turn) return; // something newer is on its way
  held = g;
  speak(g);
  const view = paint(g);
  fillForms(g, place, view);
  round?.fillRound(view);
  if (!taken) {
    takeOver(() => held, show);
    round?.followRound(place, show);
  }
  taken = true;
  document.documentElement.classList.add("ready");
}

/** Let the page say what its project is measured in: the pad has its keys by it. @param {Gathered} g */
function speak(g) {
  for (const name of ["unit", "graduation"]) document.body.dataset[name] = g.get("project")?.get(name) ?? "";
}

/** The answer is waited for: what stands below it is drawn once it is seen. @param {Gathered} g */
async function answer(g) {
  /** @type {Promise<void> | undefined} */
  let seen;
  paint(g, (place, part, view) => { seen = drawAnswer(place, part, view); });
  await seen;
}

/** @param {Gathered} g @param {(place: Element, part: string, view: any) => void} put all at once, or the answer before the rest */
function paint(g, put = draw) {
  const screen = document.body.dataset.screen ?? "";
  const view = views[screen](g);
  hint(view);
  if (screen !== "tool" || judge(view)) put(main, screen, view);
  const heading = main.querySelector("h1")?.textContent;
  if (heading) document.title = heading === "Shoulderline" ? heading : `${heading}, Shoulderline`;
  return view;
}

/** What was typed changed: all else that was gathered still holds. @param {Map<string, string>} typed */
function retype(typed) {
  if (!held || !place) return;
  place.query = typed;
  held = new Map(held).set("typed", typed);
  paint(held, drawQuickly);
  if (held.get("lacking")) show().catch(noteFault); // the answer stands without it
}

/** After each exchange: takes the page over, or draws what is new. @param {string} outcome @param {boolean} news @param {boolean} [elsewhere] */
async function exchanged(outcome, news, elsewhere = false) {
  if (elsewhere) forgetFold();
  if (taken ? news : outcome === "through" || (await standing()).cursor > 0) await show();
}

/**
 * Take what was picked for a field, so that the address says what the form holds. Where it is there no more, it is
 * picked anew.
 * @param {import("./gather.js").Place} at
 * @returns {Promise<boolean>} whether this page is the one to show
 */
async function takePicked(at) {
  if (at.screen !== "tool" || !at.query.has("into")) return true;
  const [{ settled, settled_address }, g] = await Promise.all([import("./more.js"), gather(at)]);
  const address = settled_address(g);
  if (!address.startsWith("/work/")) location.replace(address);
  at.query = settled(g);
  history.replaceState(history.state, "", address);
  return address.startsWith("/work/");
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

/** Load what this page says beyond the first layer. @param {import("./gather.js").Place} at */
async function layers({ screen, query }) {
  if (screen === "round") round = await import("./round.js");
  if (screen === "tool" && query.has("project")) views = { tool: (await import("./linked.js")).tool };
  else if (!(screen in views)) views = /** @type {any} */ (await import("./more.js"));
}

/** Lead to what the address names; what it is folded into opens. */
function lead() {
  const there = location.hash ? document.getElementById(location.hash.slice(1)) : null;
  for (let at = there; at; at = at.parentElement) if (at instanceof HTMLDetailsElement) at.open = true;
  there?.scrollIntoView();
}

async function open() {
  if (!place) return;
  await layers(place);
  if (!(await takePicked(place))) return;
  noticeLost().catch(() => {}); // a store that cannot be read is said below
  fillFields(place.query);
  fillCalled(place);
  fillPlace(place);
  putBack(place);
  if (document.querySelector("[data-rows]")) (await import("./rows.js")).showRows();
  followPuts();
  held = await gather(place, !drawnByServer);
  speak(held);
  followFields(retype, drawnByServer);
  if (!drawnByServer && place.screen === "tool") await answer(held);
  if (!drawnByServer) await show(held);
  lead();
  window.addEventListener("hashchange", lead);
  await tell();
  begin(exchanged);
  if (held.get("lacking") && place.query.size) await show();
}

// Phones are paired on the shop's own computer alone; the shell of the page is the same there as on a phone.
const phones = document.getElementById("phones");
if (phones) phones.hidden = !["127.0.0.1", "localhost"].includes(location.hostname);
// A page that is left before these have come would say so by an error; fields take any keyboard without the pad.
if (document.getElementById("standing")) import("./diagnostics.js").catch(() => undefined);
if (document.getElementById("pad")) import("./pad.js").catch(() => undefined);
keepOffline(open().catch(without));
