/** What a page does without until its first answer stands, and what the other screens say. */

import { PARTS } from "./made.js";
import { MORE } from "./made_more.js";
import "./folding.js"; // never here without it
import "./linked.js";

export { sheet_of } from "./core/entries_sheet.js";
export { sheets_above } from "./core/origin.js";
export { settled, settled_address } from "./core/picks_form.js";
export { glue, help, origin, part, project, reading, round, sheet, source } from "./core/view.js";
export { press } from "./press.js";

Object.assign(PARTS, MORE);
