/**
 * The phone's own database: one handle, and transactions that are done only when they are on the disk.
 * A phone may kill the handle of a page that lies in the background: it is then dropped, opened anew, and the
 * work is done again. So work must come to the same when it is done twice.
 */

const NAME = "shoulderline";
/** What each version of the store adds to the one before: a step that was published is never changed, only followed. */
const STEPS = [furnish];
/** What a browser throws when the handle is no longer good. */
const DEAD = new Set(["InvalidStateError", "UnknownError", "AbortError"]);

/** @type {Promise<IDBDatabase> | null} */
let handle = null;

/** What is under way here. @type {Set<IDBTransaction>} */
const underway = new Set();

/** Lets the work of a page that was left go on, once it is shown again; nothing while it is on the screen. */
let show = () => {};
/** @type {Promise<void> | null} */
let shown = null;

/**
 * A page that is left may be put aside whole, to be shown again by "back": in WebKit its transactions are put aside
 * with it, and hold up those of every other page for good. So they are given up, and begun anew if it comes back.
 */
addEventListener("pagehide", () => {
  shown ??= new Promise((resolve) => { show = resolve; });
  underway.forEach(giveUp);
});
addEventListener("pageshow", () => {
  shown = null;
  show();
});

/** Undo a transaction, if that is not on its way to the disk by now. @param {IDBTransaction} transaction */
function giveUp(transaction) {
  try {
    transaction.abort();
  } catch {
    // it is: it needs the page no more
  }
}

/** @param {IDBDatabase} database */
function furnish(database) {
  database.createObjectStore("entries", { keyPath: "id" }).createIndex("project", "project");
  database.createObjectStore("outbox", { keyPath: "id" });
  database.createObjectStore("worked", { keyPath: "entry" });
  database.createObjectStore("meta");
}

/** @returns {Promise<IDBDatabase>} */
function open() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, STEPS.length);
    request.onupgradeneeded = ({ oldVersion }) => STEPS.slice(oldVersion).forEach((step) => step(request.result));
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      request.result.onclose = drop;
      request.result.onversionchange = drop;
      resolve(request.result);
    };
  });
}

/** @returns {Promise<IDBDatabase>} */
function connect() {
  handle ??= open().catch((error) => {
    handle = null;
    throw error;
  });
  return handle;
}

/** Let go of the handle; the next transaction opens another. */
function drop() {
  handle?.then((database) => database.close()).catch(() => {});
  handle = null;
}

/**
 * @template T
 * @param {string[]} stores
 * @param {IDBTransactionMode} mode
 * @param {(transaction: IDBTransaction) => () => T} work
 * @returns {Promise<T>}
 */
async function once(stores, mode, work) {
  const database = await connect();
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(stores, mode, { durability: "strict" });
    const answer = whole(transaction, work);
    transaction.oncomplete = () => {
      underway.delete(transaction);
      resolve(answer());
    };
    transaction.onabort = () => {
      underway.delete(transaction);
      reject(transaction.error ?? new DOMException("given up", "AbortError"));
    };
    underway.add(transaction);
    if (shown) giveUp(transaction);
  });
}

/**
 * Start work; where it throws in the midst, what it had started is undone.
 * @template T
 * @param {IDBTransaction} transaction
 * @param {(transaction: IDBTransaction) => () => T} work
 * @returns {() => T}
 */
function whole(transaction, work) {
  try {
    return work(transaction);
  } catch (error) {
    transaction.abort();
    throw error;
  }
}

/**
 * Do work in one transaction. It starts its requests and gives back a function that reads their results;
 * that is called when all is on the disk.
 * @template T
 * @param {string[]} stores
 * @param {IDBTransactionMode} mode
 * @param {(transaction: IDBTransaction) => () => T} work
 * @returns {Promise<T>}
 */
export async function run(stores, mode, work) {
  try {
    return await once(stores, mode, work);
  } catch (error) {
    if (!(error instanceof DOMException) || !DEAD.has(error.name)) throw error;
    drop();
    await shown;
    return once(stores, mode, work);
  }
}

/**
 * Read one request's result.
 * @template T
 * @param {string} store
 * @param {(store: IDBObjectStore) => IDBRequest<T>} ask
 * @returns {Promise<T>}
 */
export function read(store, ask) {
  return run([store], "readonly", (transaction) => {
    const request = ask(transaction.objectStore(store));
    return () => request.result;
  });
}
