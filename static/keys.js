/**
 * What a key does to a text: where it puts what. Nothing here touches the page.
 * @typedef {{from: number, to: number, piece: string}} Edit a stretch of the text and what takes its place
 */

const LEAN = /[ ](strong|scant)$/;
const FRACTION = /[ ]?\d+\/\d+$/;
/** What one press of "back" takes: what one press put there. */
const PRESSED = /[ ](?:strong|scant|mm|cm|m)$| ?\d+\/\d+$| [-+x/] $|' $|; $|[^]$/u;

/**
 * Put a piece where the caret is; behind a lean there is nothing to say, so it goes before it.
 * @param {string} text @param {number} from @param {number} to @param {string} piece @returns {Edit}
 */
export function put(text, from, to, piece) {
  const lean = from >= text.length ? LEAN.exec(text) : null;
  const start = lean ? lean.index : from;
  const place = {before: text.slice(0, start), to: lean ? start : to, chosen: to > from};
  return /^\d+\/\d+$/.test(piece) ? fraction(place, piece) : stretch(place, piece);
}

/** @typedef {{before: string, to: number, chosen: boolean}} Place the text before it, where it ends, whether a stretch is chosen */

/** @param {Place} place @param {string} piece @returns {Edit} */
function stretch({before, to}, piece) {
  const doubled = before.endsWith(" ") && piece.startsWith(" ");
  return {from: before.length, to, piece: doubled ? piece.slice(1) : piece};
}

/**
 * Put a fraction; a second one straight behind a first can only be meant instead of it.
 * @param {Place} place @param {string} piece @returns {Edit}
 */
function fraction({before, to, chosen}, piece) {
  const first = chosen ? null : FRACTION.exec(before);
  const from = first ? first.index : before.length;
  const joint = /[\d']$/.test(before.slice(0, from)) ? " " : "";
  return {from, to, piece: joint + piece};
}

/**
 * Say a lean at the end of the text, instead of the one that stands; the same again takes it off.
 * @param {string} text @param {string} word @returns {Edit}
 */
export function lean(text, word) {
  const said = LEAN.exec(text);
  const from = said ? said.index : text.replace(/[ ]+$/, "").length;
  return {from, to: text.length, piece: said && said[1] === word ? "" : ` ${word}`};
}

/**
 * Take what is chosen, or what the last press put.
 * @param {string} text @param {number} from @param {number} to @returns {Edit}
 */
export function back(text, from, to) {
  if (to > from) return {from, to, piece: ""};
  const pressed = PRESSED.exec(text.slice(0, from));
  const alone = LEAN.test(text) && text.startsWith(" ");  // a lean with nothing before it
  return pressed ? {from: pressed.index, to: from, piece: ""} : {from: 0, to: alone ? text.length : from, piece: ""};
}
