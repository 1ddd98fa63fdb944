// What is folded away until it is asked for. Whether it is open is kept by its name, so that neither a redraw nor a way
// to another screen and back folds it again.
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { isUnfoldedForFound } from './found-draft.js'

/** What the person opened or closed. @type {Map<string, boolean>} */
const chosen = new Map()
/** For which address a fold was opened last because it holds what the address names. @type {Map<string, string>} */
const openedFor = new Map()

/**
 * @typedef {object} Fold
 * @property {string} name unique in the whole page, the job included
 * @property {unknown} summary says too what of its content was refused, is held or warns
 * @property {string} [label] the same in full, where it is read without what stands around it
 * @property {unknown} body
 * @property {boolean} [isOpen] until the person opens or closes it
 * @property {boolean} [isHere] it holds what the address leads to
 * @property {string} [look] a class
 */

/** @param {Fold} fold */
export function folded({ name, summary, label, body, isOpen = false, isHere = false, look = '' }) {
  if (!isHere) openedFor.delete(name)
  else if (openedFor.get(name) !== location.hash) {
    openedFor.set(name, location.hash)
    chosen.set(name, true)
  }
  const isShown = chosen.get(name) ?? isOpen
  // A form inside may fold it, and a search of the page may open it: what counts is how it stands.
  const note = (/** @type {Event} */ event) => {
    const fold = /** @type {HTMLDetailsElement} */ (event.currentTarget)
    const { open } = fold
    if (open === isShown) return
    chosen.set(name, open)
    // At the foot of the screen what is unfolded would else stay out of sight.
    if (open && !isUnfoldedForFound(fold)) fold.scrollIntoView({ block: 'nearest' })
  }
  return html`
    <details class=${`folded ${look}`} ?open=${isShown} @toggle=${note}>
      <summary aria-label=${label ?? nothing}><span class="fold-said">${summary}</span></summary>
      ${body}
    </details>`
}
