/** Words that stand for a length (the largest, fits): buttons beside a field put them in. */

/** @param {HTMLElement} button @returns {HTMLInputElement | null | undefined} */
function inputOf(button) {
  const around = button.closest(".entry") ?? button.closest(".field");
  return around?.querySelector("input.entry-reading, input[name]");
}

/** Put a button's text in; one that ends with a space waits for a length behind it. @param {MouseEvent} event */
function put(event) {
  const button = /** @type {Element} */ (event.target).closest(".puts [data-put]");
  if (!(button instanceof HTMLElement)) return;
  const [input, text] = [inputOf(button), button.dataset.put ?? ""];
  if (!input) return;
  input.value = text;
  input.dispatchEvent(new InputEvent("input", { bubbles: true }));
  if (text.endsWith(" ")) input.focus();
  if (document.activeElement === input) input.setSelectionRange(text.length, text.length);
}

/** A press leaves the focus where it is: else what hangs on it would move the button from under the thumb. @param {Event} event */
function hold(event) {
  if (event.target instanceof Element && event.target.closest(".puts [data-put], .take")) event.preventDefault();
}

/** From now on these buttons work. */
export function followPuts() {
  for (const down of ["pointerdown", "mousedown"]) document.addEventListener(down, hold);
  document.addEventListener("click", put);
}
