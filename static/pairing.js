/**
 * A scanned code comes as the address's fragment, which no server and no log sees: it is taken out of the
 * address, and one press sends it.
 */

const token = location.hash.slice(1);

/** @param {string} id @returns {HTMLElement} */
function at(id) {
  return /** @type {HTMLElement} */ (document.getElementById(id));
}

if (/^[\w-]{22}$/.test(token)) {
  history.replaceState(null, "", location.pathname);
  /** @type {HTMLInputElement} */ (at("token")).value = token;
  at("how").textContent = "The code came with the link. One press, and this phone stays paired.";
  for (const label of document.querySelectorAll("label")) label.hidden = true;
  at("code").hidden = true;
}
