// A form that unfolds under its heading folds away again once it is saved; the keyboard goes to the heading.

/** @param {Event} event what was sent @param {Promise<boolean>} saving whether it went well */
export async function foldAfter(event, saving) {
  const details = /** @type {Element} */ (event.target).closest('details')
  if (!(await saving) || !details) return
  details.open = false
  details.querySelector('summary')?.focus({ preventScroll: true })
}
