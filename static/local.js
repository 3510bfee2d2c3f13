/**
 * What this phone holds: every entry it knows of, what is still to be sent, and where it is with its server.
 * @typedef {{id: string, project: string, kind: string, body: any, made_at: string, by: string,
 *   replaces: string[]}} Entry as it is sent
 * @typedef {Entry & {seq?: number, counter?: number}} Held `seq` once the server has it, else the phone's counter
 * @typedef {{id: string, counter: number, entry: Entry, why: string}} Unsent `why`: what the server has against it
 * @typedef {{id: string, why: string}} Refusal
 * @typedef {{epoch: string, kept: string[], refused: Refusal[], worked: Record<string, any>,
 *   entries: Held[], cursor: number, more: boolean}} Answer of the server
 * @typedef {{epoch: string, cursor: number, unsent: Unsent[]}} Standing with the server
 */

import { read, run } from "./database.js";
import { uuid7 } from "./ids.js";

/** Who wants to know what this page put into the store, or, by nothing, that all of it may be another. @type {((put: Held[] | undefined) => void)[]} */
const watching = [];

/** Tell of what this page puts into the store. @param {(put: Held[] | undefined) => void} told */
export function watch(told) {
  watching.push(told);
}

/** @param {Held[] | undefined} put */
const tell = (put) => watching.forEach((told) => told(put));

const ALL = ["entries", "outbox", "worked", "meta"];

const DAY = 24 * 60 * 60 * 1000; // milliseconds

/** Whether this page has seen to the promise. */
let seen = false;

/**
 * Ask the browser for its promise not to clear what is kept here, once something is: asked before, browsers say no.
 * An answer holds for a day at least, since Firefox puts the question to the maker. That it was asked is written with
 * the answer: a page that is left before has no answer, and the next save asks again.
 */
async function askToStay() {
  if (seen) return;
  seen = true;
  const answered = await read("meta", (store) => store.get("asked"));
  if (Math.abs(Date.now() - answered) < DAY) return;
  const given = (await navigator.storage?.persist?.()) ?? false;
  await run(["meta"], "readwrite", (transaction) => {
    const meta = transaction.objectStore("meta");
    meta.put(Date.now(), "asked");
    meta.put(given, "stays");
    return () => {};
  });
}

/**
 * Keep entries and put them in the outbox, all in one transaction; one that is here already changes nothing.
 * Resolves when they are on the disk, with whether any was new.
 * @param {...Entry} made
 * @returns {Promise<boolean>}
 */
export async function save(...made) {
  const added = await run(["entries", "outbox", "meta"], "readwrite", (transaction) => adding(transaction, made));
  tell(added);
  askToStay();
  return added.length > 0;
}

/** @param {IDBTransaction} transaction @param {Entry[]} made @returns {() => Held[]} what is new here */
function adding(transaction, made) {
  const known = made.map((entry) => transaction.objectStore("entries").getKey(entry.id));
  const last = transaction.objectStore("meta").get("counter");
  /** @type {Held[]} */
  let fresh = [];
  last.onsuccess = () => {
    const unknown = made.filter((_, at) => known[at].result === undefined);
    fresh = unknown.map((entry, at) => enter(transaction, entry, (last.result ?? 0) + 1 + at));
    transaction.commit(); // the page may be left before the writes answer
  };
  return () => fresh;
}

/** @param {IDBTransaction} transaction @param {Entry} entry @param {number} counter @returns {Held} */
function enter(transaction, entry, counter) {
  const held = { ...entry, counter };
  transaction.objectStore("entries").put(held);
  transaction.objectStore("outbox").put({ id: entry.id, counter, entry, why: "" });
  transaction.objectStore("meta").put(counter, "counter");
  return held;
}

/** What is not sent, in the order it was made; the refused ones too. @returns {Promise<Unsent[]>} */
export async function unsent() {
  const all = await read("outbox", (store) => store.getAll());
  return all.sort((a, b) => a.counter - b.counter);
}

/** @returns {Promise<Standing>} */
export async function standing() {
  const [epoch, cursor] = await run(["meta"], "readonly", (transaction) => {
    const meta = transaction.objectStore("meta");
    const requests = [meta.get("epoch"), meta.get("cursor")];
    return () => requests.map((request) => request.result);
  });
  return { epoch: epoch ?? "", cursor: cursor ?? 0, unsent: await unsent() };
}

/**
 * Take over a server's answer, all of it or nothing. Only what the answer names leaves the outbox.
 * @param {Answer} answer
 * @returns {Promise<void>}
 */
export async function settle(answer) {
  await run(ALL, "readwrite", (transaction) => {
    const [entries, outbox, worked, meta] = ALL.map((name) => transaction.objectStore(name));
    answer.kept.forEach((id) => outbox.delete(id));
    answer.refused.forEach((refusal) => mark(outbox, refusal));
    answer.entries.forEach((entry) => entries.put(entry));
    Object.entries(answer.worked).forEach(([entry, outcome]) => worked.put({ entry, outcome }));
    meta.put(answer.cursor, "cursor");
    meta.put(answer.epoch, "epoch");
    return () => {};
  });
  tell(answer.entries);
}

/** @param {IDBObjectStore} outbox @param {Refusal} refusal */
function mark(outbox, { id, why }) {
  const found = outbox.get(id);
  found.onsuccess = () => found.result && outbox.put({ ...found.result, why });
}

/** Write down that the server will not have an entry; it stays here. @param {Refusal} refusal @returns {Promise<void>} */
export function refuse(refusal) {
  return run(["outbox"], "readwrite", (transaction) => {
    mark(transaction.objectStore("outbox"), refusal);
    return () => {};
  });
}

/**
 * Start from zero with a server whose database is another one now (a restored backup): what others made is
 * dropped and comes again, what this phone made is sent again in its old order.
 * @param {string} epoch
 * @returns {Promise<void>}
 */
export async function restart(epoch) {
  const device = await deviceId();
  await run(ALL, "readwrite", (transaction) => {
    const [entries, outbox, worked, meta] = ALL.map((name) => transaction.objectStore(name));
    const [held, waiting] = [entries.getAll(), outbox.getAll()];
    waiting.onsuccess = () => {
      [entries, outbox, worked].forEach((store) => store.clear());
      meta.put(epoch, "epoch");
      meta.put(0, "cursor");
      ownOf(device, held.result, waiting.result).forEach((entry, at) => enter(transaction, entry, at + 1));
    };
    return () => {};
  });
  tell(undefined);
}

/** @param {string} device @param {Held[]} held @param {Unsent[]} waiting @returns {Entry[]} */
function ownOf(device, held, waiting) {
  const copies = new Map(waiting.map((each) => [each.id, each.entry]));
  return held
    .filter((entry) => entry.by === device || copies.has(entry.id))
    .sort(byOrder)
    .map((entry) => copies.get(entry.id) ?? asSent(entry));
}

/** @param {Held} entry @returns {Entry} */
function asSent({ id, project, kind, body, made_at, by, replaces }) {
  return { id, project, kind, body, made_at, by, replaces };
}

/** By the server's order, then by the phone's own counter. @param {Held} a @param {Held} b */
function byOrder(a, b) {
  return (a.seq ?? Infinity) - (b.seq ?? Infinity) || (a.counter ?? 0) - (b.counter ?? 0);
}

/** Every entry, or those of a project. @param {string} [project] @returns {Promise<Held[]>} */
export function entries(project) {
  return read("entries", (store) => (project === undefined ? store.getAll() : store.index("project").getAll(project)));
}

/** What the server worked for these entries, where it has. @param {string[]} ids @returns {Promise<[string, any][]>} */
export async function worked(ids) {
  const found = await run(["worked"], "readonly", (transaction) => {
    const requests = ids.map((id) => transaction.objectStore("worked").get(id));
    return () => requests.map((request) => request.result);
  });
  return found.filter(Boolean).map(({ entry, outcome }) => [entry, outcome]);
}

/** Whether the browser promised to keep all this; nothing was asked yet where it is undefined. @returns {Promise<boolean | undefined>} */
export function stays() {
  return read("meta", (store) => store.get("stays"));
}

/** This phone's own id, made once. @returns {Promise<string>} */
export function deviceId() {
  return run(["meta"], "readwrite", (transaction) => {
    const meta = transaction.objectStore("meta");
    const known = meta.get("device");
    let id = "";
    known.onsuccess = () => {
      id = known.result ?? uuid7();
      if (!known.result) meta.put(id, "device");
    };
    return () => id;
  });
}
