/**
 * What this phone was told about light and thumbs, put on the page before it is drawn: so a classic script, and
 * from the one store of a browser that answers at once.
 */
"use strict";

(() => {
  const page = document.documentElement;
  const PREFIX = "shoulderline-";

  /** @param {string} name @returns {string} */
  const chosen = (name) => {
    try {
      return localStorage.getItem(PREFIX + name) ?? "";
    } catch {
      return ""; // storage is switched off: the page is as the phone has it
    }
  };

  /** @param {string} name @param {string} value */
  const put = (name, value) => {
    if (value) page.setAttribute(`data-${name}`, value);
    else page.removeAttribute(`data-${name}`);
  };

  /** @param {Event} event */
  const choose = ({ target }) => {
    const name = target instanceof HTMLSelectElement ? target.dataset.chosen : undefined;
    if (!name) return;
    const { value } = /** @type {HTMLSelectElement} */ (target);
    localStorage.setItem(PREFIX + name, value);
    put(name, value);
  };

  const show = () => {
    for (const select of document.querySelectorAll("select[data-chosen]")) {
      if (select instanceof HTMLSelectElement) select.value = chosen(select.dataset.chosen ?? "");
    }
  };

  for (const name of ["theme", "hand"]) put(name, chosen(name));
  document.addEventListener("DOMContentLoaded", show);
  document.addEventListener("change", choose);
})();
