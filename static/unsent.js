/** What is not sent: the list of what the server refused, and the way out for all of it as files. */

import { draw } from "./draw.js";
import { unsent } from "./local.js";

/** @typedef {import("./local.js").Unsent} Unsent */

const FORMAT = 1; // of a project file, as webapp/store/project_file.py reads it

document.addEventListener("unsent", (event) => {
  const place = document.getElementById("refused");
  const all = /** @type {Unsent[]} */ (/** @type {CustomEvent} */ (event).detail);
  if (place) draw(place, "refused", refusedView(all.filter((each) => each.why)));
});

/** @param {Unsent[]} refused @returns {Map<string, any>} */
function refusedView(refused) {
  const lines = refused.map(({ entry, why }) => new Map([["kind", entry.kind], ["said", said(entry.body)], ["why", why]]));
  return new Map([["refused", lines]]);
}

/** What an entry is about, in its own words. @param {any} body @returns {string} */
function said(body) {
  const words = [body.name, body.place, body.called, body.text];
  return words.filter((word) => typeof word === "string" && word).join(", ");
}

/** A project file for each project: the server takes it in again by the same door. @param {Unsent[]} all */
function files(all) {
  const projects = new Set(all.map(({ entry }) => entry.project));
  return [...projects].map((project) => {
    const entries = all.map(({ entry }) => entry).filter((entry) => entry.project === project);
    return { name: `shoulderline-unsent-${project}.json`, text: JSON.stringify({ shoulderline: FORMAT, project, entries, worked: {} }) };
  });
}

/** @param {{name: string, text: string}} file */
function download({ name, text }) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

document.addEventListener("click", async ({ target }) => {
  if (target instanceof Element && target.closest("[data-export-unsent]")) files(await unsent()).forEach(download);
});
