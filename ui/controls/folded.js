// What is folded away until it is asked for. Whether it is open is kept by its name, so that neither a redraw nor a way
// to another screen and back folds it again. On a phone what lies folded is not even drawn until the hand is on it: of
// a long screen that is most.
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { isAnyFound } from '../kept.js'
import { redraw, state } from '../state.js'
import { isUnfoldedForFound } from './found-draft.js'

/** What the person opened or closed. @type {Map<string, boolean>} */
const chosen = new Map()
/** For which address a fold was opened last because it holds what the address names. @type {Map<string, string>} */
const openedFor = new Map()
/** What the hand is about to open. @type {Set<string>} */
const asked = new Set()
let turns = 0

/** How often a fold was opened or closed: what holds folds is made anew after each. */
export const foldsTurned = () => turns

/**
 * @typedef {object} Fold
 * @property {string} name unique in the whole page, the job included
 * @property {unknown} summary says too what of its content was refused, is held or warns
 * @property {string} [label] the same in full, where it is read without what stands around it
 * @property {unknown} body a function, where it is much
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
  const isDrawn = isShown || asked.has(name) || isAllDrawn()
  // Drawn before the browser opens it, so that it does not open empty.
  const ask = () => {
    if (isDrawn) return
    turns += 1
    asked.add(name)
    redraw()
  }
  // A form inside may fold it, and a search of the page may open it: what counts is how it stands.
  const note = (/** @type {Event} */ event) => {
    const fold = /** @type {HTMLDetailsElement} */ (event.currentTarget)
    const { open } = fold
    if (!open) asked.delete(name)
    if (open === isShown) return
    turns += 1
    chosen.set(name, open)
    if (!isDrawn) redraw()
    // At the foot of the screen what is unfolded would else stay out of sight.
    if (open && !isUnfoldedForFound(fold)) fold.scrollIntoView({ block: 'nearest' })
  }
  return html`
    <details class=${`folded ${look}`} ?open=${isShown} @toggle=${note}>
      <summary aria-label=${label ?? nothing} @click=${ask}><span class="fold-said">${summary}</span></summary>
      ${isDrawn ? (typeof body === 'function' ? body() : body) : ''}
    </details>`
}

/** On a desk a page is searched, folds and all. And what was entered before the page was ended unfolds what it stands
 * in: for that it must be drawn. */
const isAllDrawn = () => state.wide || !state.route.job || isAnyFound(state.route.job)
