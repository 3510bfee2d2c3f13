/**
 * One exchange with the server: sends what is unsent, takes what is new, until there is no more of either.
 * Only what the server names as kept leaves the outbox; whatever else answers (a hotel's login page, an
 * error, silence) changes nothing.
 * @typedef {import("./local.js").Answer} Answer
 * @typedef {import("./local.js").Entry} Entry
 * @typedef {"through" | "away" | "busy"} Outcome busy: another tab is at it
 * @typedef {{answer?: Answer, against?: string, skew?: number}} Reply `against`: what the server has against it
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
 * @param {(skew: number) => void} heard called with how far this phone's clock is ahead, in milliseconds
 * @returns {Promise<Outcome>}
 */
export async function exchange(heard) {
  const turns = () => all(heard);
  if (!navigator.locks) return turns(); // plain http: the server takes the same entry twice without harm
  return navigator.locks.request("shoulderline-sync", { ifAvailable: true }, (lock) => (lock ? turns() : "busy"));
}

/** @param {(skew: number) => void} heard @returns {Promise<Outcome>} */
async function all(heard) {
  let most = MOST;
  let restarted = false;
  for (;;) {
    const { epoch, cursor, unsent } = await standing();
    const waiting = unsent.filter((each) => !each.why).map((each) => each.entry);
    const batch = fitting(waiting.slice(0, most));
    const { answer, against, skew } = await ask({ protocol: PROTOCOL, epoch, cursor, entries: batch });
    if (skew !== undefined) heard(skew);
    if (against !== undefined && batch.length) {
      most = await narrow(batch, against);
    } else if (!answer) {
      return "away";
    } else if (epoch && answer.epoch !== epoch) {
      if (restarted) return "away";
      restarted = true;
      await restart(answer.epoch);
    } else {
      const own = only(answer, batch);
      await settle(own);
      const echoed = own.kept.length + own.refused.length;
      if (!answer.more && waiting.length === echoed) return "through";
      if (!echoed && answer.cursor <= cursor) return "away"; // nothing moves: it would be asked for ever
    }
  }
}

/** As many entries as fit, one at least. @param {Entry[]} entries @returns {Entry[]} */
function fitting(entries) {
  let room = ROOM;
  const over = entries.findIndex((entry) => (room -= JSON.stringify(entry).length * 3) < 0);
  return over < 0 ? entries : entries.slice(0, Math.max(1, over));
}

/**
 * The server will not have a batch: halve it, until the entry that it means stands alone and is marked.
 * @param {Entry[]} batch @param {string} why
 * @returns {Promise<number>} how many to send next
 */
async function narrow(batch, why) {
  if (batch.length > 1) return Math.ceil(batch.length / 2);
  await refuse({ id: batch[0].id, why });
  return MOST;
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
  if (!response.ok) return {};
  const answer = await response.json();
  return isAnswer(answer) ? { answer: { worked: {}, ...answer }, skew: skewOf(response) } : {};
}

/** @param {Response} response @returns {Promise<string>} */
async function reason(response) {
  const said = await response.json().catch(() => null);
  return said?.errors?.[""] || `The server answered ${response.status}.`;
}

/** @param {any} answer @returns {answer is Answer} */
function isAnswer(answer) {
  const lists = [answer?.kept, answer?.refused, answer?.entries];
  return lists.every(Array.isArray) && typeof answer.epoch === "string" && Number.isInteger(answer.cursor);
}

/** @param {Response} response @returns {number | undefined} */
function skewOf(response) {
  const date = Date.parse(response.headers.get("Date") ?? "");
  return Number.isNaN(date) ? undefined : Date.now() - date;
}
