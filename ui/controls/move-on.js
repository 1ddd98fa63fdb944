// Enter goes on to the next field, as the keys on the screen promise; after the last one to what comes next.

/** @param {KeyboardEvent} event */
export function moveOn(event) {
  if (event.key !== 'Enter' || event.isComposing) return
  event.preventDefault()
  const typed = 'input:is([type=text], [type=tel], [type=number]), textarea, select'
  /** @type {HTMLElement[]} */
  const fields = Array.from(document.querySelectorAll(`.screen-main :is(${typed})`))
  const shown = fields.filter((field) => field.checkVisibility?.() ?? field.getClientRects().length > 0)
  const next = shown[shown.indexOf(/** @type {HTMLElement} */ (event.currentTarget)) + 1]
  const onward = /** @type {HTMLElement | null} */ (document.querySelector('.foot .bar .primary'))
  ;(next ?? onward)?.focus()
}
