/** A tool's page in a project, where fields take their values from other numbers. */

import "./folding.js"; // never here without it

export { tool } from "./core/view.js";
