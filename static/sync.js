/**
 * One exchange with the server: sends what is unsent, takes what is new, until there is no more of either.
 * Only what the server names as kept leaves the outbox; whatever else answers (a hotel's login page, an
 * error, silence) changes nothing.
 * @typedef {import("./local.js").Answer} Answer
 * @typedef {import("./local.js").Entry} Entry
 * @typedef {"through" | "away" | "busy" | "unpaired"} Outcome busy: another tab is at it; unpaired: never, or no more
 * @typedef {{skew: (ahead: number) => void, news: () => void}} Ears told how far this phone's clock is ahead, in
 *   milliseconds, and that what it holds has changed
 * @typedef {{answer?: Answer, against?: string, skew?: number, unpaired?: boolean}} Reply `against`: what the server has against it
 */

import { refuse, restart, settle, standing } from "./local.js";

const PROTOCOL = 1;
const MOST = 200; // entries in one question, by contract
const ROOM = 900_000; // characters in one question; the server takes 1 MiB
const PATIENCE = 20_000; // milliseconds
/** Statuses that say that the entries themselves are wrong. */
const AGAINST = new Set([400, 409, 413]);

/**
 * One tab sends at a time.
 * @param {Ears} ears
 * @returns {Promise<Outcome>}
 */
export async function exchange(ears) {
  const turns = () => all(ears);
  if (!navigator.locks) return turns(); // plain http: the server takes the same entry twice without harm
  return navigator.locks.request("shoulderline-sync", { ifAvailable: true }, (lock) => (lock ? turns() : "busy"));
}

/**
 * @typedef {{most: number, restarted: boolean}} Turns how many entries the next question may hold, and whether this
 *   exchange has started from zero
 */

/** @param {Ears} ears @returns {Promise<Outcome>} */
async function all(ears) {
  const turns = { most: MOST, restarted: false };
  for (;;) {
    const outcome = await one(turns, ears);
    if (outcome) return outcome;
  }
}

/** One question; nothing while there is more to ask. @param {Turns} turns @param {Ears} ears @returns {Promise<Outcome | undefined>} */
async function one(turns, ears) {
  const { epoch, cursor, unsent } = await standing();
  const waiting = unsent.filter((each) => !each.why).map((each) => each.entry);
  const batch = fitting(waiting.slice(0, turns.most));
  const { answer, against, skew, unpaired } = await ask({ protocol: PROTOCOL, epoch, cursor, entries: batch });
  if (skew !== undefined) ears.skew(skew);
  if (against !== undefined && batch.length) return narrow(turns, batch, against);
  if (unpaired) return "unpaired";
  if (!answer) return "away";
  if (epoch !== answer.epoch || answer.entries.length || answer.kept.length) ears.news();
  if (epoch && answer.epoch !== epoch) return anew(turns, answer.epoch);
  return take(only(answer, batch), waiting.length, cursor);
}

/** @param {Turns} turns @param {string} epoch @returns {Promise<Outcome | undefined>} */
async function anew(turns, epoch) {
  if (turns.restarted) return "away"; // a server that changes its epoch at every question
  turns.restarted = true;
  await restart(epoch);
  return undefined;
}

/** @param {Answer} answer @param {number} waiting @param {number} cursor @returns {Promise<Outcome | undefined>} */
async function take(answer, waiting, cursor) {
  await settle(answer);
  const named = answer.kept.length + answer.refused.length;
  if (!answer.more && named === waiting) return "through";
  return named || answer.cursor > cursor ? undefined : "away"; // nothing moves: it would be asked for ever
}

/** As many entries as fit, one at least. @param {Entry[]} entries @returns {Entry[]} */
function fitting(entries) {
  let room = ROOM;
  const over = entries.findIndex((entry) => (room -= JSON.stringify(entry).length * 3) < 0);
  return over < 0 ? entries : entries.slice(0, Math.max(1, over));
}

/**
 * The server will not have a batch: halve it, until the entry that it means stands alone and is marked.
 * @param {Turns} turns @param {Entry[]} batch @param {string} why
 * @returns {Promise<undefined>}
 */
async function narrow(turns, batch, why) {
  turns.most = batch.length > 1 ? Math.ceil(batch.length / 2) : MOST;
  if (batch.length === 1) await refuse({ id: batch[0].id, why });
}

/** An answer for what was asked, and nothing else. @param {Answer} answer @param {Entry[]} batch @returns {Answer} */
function only(answer, batch) {
  const sent = new Set(batch.map((entry) => entry.id));
  return {
    ...answer,
    kept: answer.kept.filter((id) => sent.has(id)),
    refused: answer.refused.filter(({ id }) => sent.has(id)),
  };
}

/** @param {object} question @returns {Promise<Reply>} */
async function ask(question) {
  try {
    const response = await fetch("/sync", {
      method: "POST",
      headers: { "Content-Type": "application/json", "Shoulderline-Sync": "1" },
      body: JSON.stringify(question),
      cache: "no-store",
      credentials: "same-origin",
      redirect: "error",
      signal: AbortSignal.timeout(PATIENCE),
    });
    return await heardFrom(response);
  } catch {
    return {}; // no network, no server, no patience left, or an answer that is no JSON
  }
}

/** @param {Response} response @returns {Promise<Reply>} */
async function heardFrom(response) {
  if (AGAINST.has(response.status)) return { against: await reason(response) };
  // Some other network's 401 is no word of the shop's.
  if (response.status === 401 && response.headers.has("Shoulderline-Pairing")) return { unpaired: true };
  if (!response.ok) return {};
  const answer = await response.json();
  return isAnswer(answer) ? { answer, skew: skewOf(response) } : {};
}

/** @param {Response} response @returns {Promise<string>} */
async function reason(response) {
  const said = await response.json().catch(() => null);
  return said?.errors?.[""] || `The server answered ${response.status}.`;
}

/**
 * Whether this is a whole answer of a server of ours, in every part that is going to be written down.
 * @param {any} answer
 * @returns {answer is Answer}
 */
function isAnswer(answer) {
  const worked = answer?.worked;
  const held = typeof worked === "object" && worked !== null && !Array.isArray(worked);
  return held && isText(answer.epoch) && Number.isSafeInteger(answer.cursor) && answer.cursor >= 0 && areRows(answer);
}

/** @param {any} value */
const isText = (value) => typeof value === "string" && value !== "";

/** @param {any} answer */
function areRows({ kept, refused, entries }) {
  return [kept, refused, entries].every(Array.isArray) && kept.every(isText)
    && refused.every((/** @type {any} */ each) => typeof each?.id === "string" && isText(each.why))
    && entries.every((/** @type {any} */ each) => isText(each?.id) && isText(each?.project));
}

/** @param {Response} response @returns {number | undefined} */
function skewOf(response) {
  const date = Date.parse(response.headers.get("Date") ?? "");
  return Number.isNaN(date) ? undefined : Date.now() - date;
}
