/**
 * A round of dry fit on the phone: one place after another, the focus in the reading and the pad open all the while.
 * What is half typed holds its place: whatever comes from other phones meanwhile, it is kept where it was read.
 */

/** @typedef {import("./gather.js").Place} Place */

const asking = document.getElementById("asking");
const skip = document.getElementById("skip");
const form = /** @type {HTMLFormElement | null} */ (asking?.querySelector("form") ?? null);
const field = /** @type {HTMLInputElement | null} */ (asking?.querySelector("[data-kind]") ?? null);
let opened = false;

if (field) field.dataset.next = "keep"; // what the pad's last key says here

/**
 * Ask for the place that the view says, or for nothing more.
 * @param {Map<string, any>} view
 */
export function fillRound(view) {
  if (!asking || !field) return;
  const now = view.get("now");
  if (!now) field.blur(); // before it goes: the pad closes with it
  asking.hidden = !now;
  asking.toggleAttribute("data-stick", Boolean(view.get("tried")));
  skip?.toggleAttribute("hidden", !now?.get("skip"));
  document.getElementById("after")?.toggleAttribute("hidden", !view.get("done"));
  if (now && !opened) field.focus();
  opened = true;
}

/**
 * Go from place to place without leaving the page.
 * @param {Place} place
 * @param {() => Promise<void>} show
 */
export function followRound(place, show) {
  if (!form || !field) return;
  const here = field;
  form.addEventListener("kept", () => here.dispatchEvent(new InputEvent("input", { bubbles: true }))); // it is empty now
  form.addEventListener("input", () => hold(place, here));
  form.addEventListener("onward", keep);
  document.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest("a[data-at]") : null;
    if (link && !event.defaultPrevented && plain(event)) go(event, /** @type {HTMLAnchorElement} */ (link), place, show);
  });
  for (const down of ["pointerdown", "mousedown"]) form.addEventListener(down, stay);
  skip?.addEventListener("click", () => document.querySelector(".skip a")?.dispatchEvent(new MouseEvent("click", { bubbles: true, cancelable: true })));
}

/** The pad's last key keeps the reading. @param {Event} event */
function keep(event) {
  event.preventDefault();
  form?.requestSubmit();
}

/** @param {Place} place @param {HTMLInputElement} input */
function hold(place, input) {
  const about = /** @type {HTMLInputElement | null} */ (form?.elements.namedItem("place"));
  if (input.value && about) place.query.set("held", about.value);
  else place.query.delete("held");
}

/** A press on this form's buttons leaves the focus in the reading, or the pad would close. @param {Event} event */
function stay(event) {
  if (event.target instanceof Element && event.target.closest("button")) event.preventDefault();
}

/** @param {MouseEvent} event */
const plain = (event) => !(event.ctrlKey || event.metaKey || event.shiftKey || event.altKey || event.button);

/** Ask for the place that a link names. @param {Event} event @param {HTMLAnchorElement} link @param {Place} place @param {() => Promise<void>} show */
async function go(event, link, place, show) {
  event.preventDefault();
  const asked = new URL(link.href).searchParams;
  for (const name of ["at", "taken"]) place.query.set(name, asked.get(name) ?? "");
  place.query.delete("held");
  form?.reset();
  field?.dispatchEvent(new InputEvent("input", { bubbles: true })); // nothing is half typed any more
  history.replaceState(history.state, "", link.href);
  await show();
  field?.focus();
  field?.select();
}
