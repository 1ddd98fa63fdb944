// A form that unfolds under its heading folds away again once it is saved; the keyboard goes to the heading.

/** @param {Event} event what was sent @param {Promise<boolean>} saving whether it went well */
export async function foldAfter(event, saving) {
  const details = /** @type {Element} */ (event.target).closest('details')
  if (!(await saving) || !details) return
  // Whoever has gone on to another field by now keeps it: what they type must not be lost.
  const { activeElement } = document
  const isHere = details.contains(activeElement) || activeElement === document.body
  details.open = false
  if (isHere) details.querySelector('summary')?.focus({ preventScroll: true })
}
