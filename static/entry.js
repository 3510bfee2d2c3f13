/** Entries of what the core drafted, with what only an edge can add: ids, the time, the device, what was seen. */

import { numbered } from "./core/entries_numbered.js";
import { sheet_of } from "./core/entries_sheet.js";
import { to_json } from "./core/sheet.js";
import { instant } from "./ids.js";
import { deviceId } from "./local.js";
import { ENGINE, FACTORS } from "./made.js";
import { fromPython } from "./python.js";
import { everyTool } from "./tools.js";

/** @typedef {import("./local.js").Entry} Entry */

/**
 * The entry of a draft, and those that follow it: the same ids at every press.
 * @param {Map<string, any>} drafted
 * @param {string} id of the first
 * @param {string} project that is at hand; one that is started has the id of its own first entry
 * @returns {Promise<Entry[]>}
 */
export async function entriesOf(drafted, id, project) {
  const own = drafted.get("kind") === "project" ? id : project;
  const frame = { project: own, made_at: instant(), by: await deviceId() };
  const drafts = /** @type {Map<string, any>[]} */ (numbered(drafted, id));
  return Promise.all(
    drafts.map(async (each) => ({
      id: each.get("id"),
      kind: each.get("kind"),
      body: { ...fromPython(each.get("body")), ...(await seen(each)) },
      replaces: fromPython(each.get("replaces")),
      ...frame,
    })),
  );
}

/** With which engine a sheet was worked, and a digest of what it said. @param {Map<string, any>} drafted */
async function seen(drafted) {
  if (drafted.get("kind") !== "sheet") return {};
  const text = to_json(sheet_of(drafted.get("body"), await everyTool(), FACTORS).get("sheet"));
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  const hex = Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
  return { engine: ENGINE, digest: hex };
}
