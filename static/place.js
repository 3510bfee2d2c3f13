/** Where on the screen a field of a form that keeps something is, so that it stays under the thumb. */

/**
 * Note where a field is, or what has the focus in its form: without the pad the page is longer, and would leave the
 * thumb at its top.
 * @param {HTMLInputElement | null} field
 * @returns {() => void} what brings it back once the pad is gone
 */
export function placeHeld(field) {
  const [form, active] = [field?.closest("form.keep"), document.activeElement];
  const at = form?.contains(active) ? active : field;
  const gone = active !== document.body && at !== active; // the focus went elsewhere, and the page with it
  if (!form || !at || gone) return () => {};
  const { top } = at.getBoundingClientRect();
  return () => {
    const now = at.getBoundingClientRect();
    const seen = now.top >= 0 && now.bottom <= window.innerHeight;
    if (at.getClientRects().length > 0 && !seen) window.scrollBy({ top: now.top - top, behavior: "instant" });
  };
}
