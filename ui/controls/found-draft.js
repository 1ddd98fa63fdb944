// A word on what was entered before the page was ended and is not saved, and the way to drop it. What it stands in is
// unfolded.
import { html } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'

/** @param {{ isFound: boolean, forget: () => void }} form */
export const foundDraft = ({ isFound, forget }) =>
  isFound
    ? html`<div class="found-draft">
      <p>${words.controls.found}</p>
      <button type="button" class="quiet" @click=${forget}>${words.controls.dropFound}</button>
    </div>`
    : ''

/** Those for which all was unfolded once; the person may fold it again. @type {WeakSet<Element>} */
const seen = new WeakSet()
/** What was unfolded and has not told of it yet. @type {WeakSet<Element>} */
const unfolded = new WeakSet()

/** After a drawing: unfolds whatever holds something that was found. */
export function unfoldFound() {
  for (const found of document.querySelectorAll('.found-draft')) {
    if (seen.has(found)) continue
    seen.add(found)
    for (let fold = found.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) {
      if (fold.open) continue
      unfolded.add(fold)
      fold.open = true
    }
  }
}

/** Whether it has just been unfolded for what was found, and not by the person. @param {Element} fold */
export const isUnfoldedForFound = (fold) => unfolded.delete(fold)
