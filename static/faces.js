/** What a key of the pad says, and whether it is pressed. */

/** @param {HTMLElement} key @param {string} words @param {boolean} on */
export function label(key, words, on) {
  key.textContent = words;
  key.setAttribute("aria-pressed", String(on));
}

/** The 64ths are too many for one pane: a second press shows the upper half. @param {HTMLElement} key @param {string} pane */
export function label_parts(key, pane) {
  const { of = "" } = key.dataset;
  const words = of === "64" ? { 64: "33 up", upper: "digits" }[pane] : undefined;
  label(key, words ?? (of === "32" ? "32nds" : `${of}ths`), (pane === "upper" ? "64" : pane) === of);
}
