/** The fold of entries: for a page with a project, and for one that names the projects there are. */

export { add, start, summaries, summary } from "./core/fold.js";
