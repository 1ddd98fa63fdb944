// The buttons that make a photo larger, and those that lead to the next one.
/** @import { PartPhoto } from '../part/all-photos.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { addressOf, nameOf } from '../part/all-photos.js'
import { swap } from '../route.js'
import { words } from '../words.js'
import { isZoomed, zoomAll } from './photo-frame.js'

const text = words.markup

/** @param {{ job: string, previous: PartPhoto | undefined, next: PartPhoto | undefined }} [steps] */
export function zoomBar(steps) {
  const canShrink = isZoomed() ? 'false' : 'true'
  return html`
    <div class="bar zoom-bar">
      ${steps ? step(steps.job, steps.previous, '◂', words.part.previousPart) : ''}
      <button type="button" aria-label=${text.zoomOut} aria-disabled=${canShrink}
        @click=${() => zoomAll('smaller')}>−</button>
      <button type="button" aria-disabled=${canShrink} @click=${() => zoomAll('whole')}>${text.whole}</button>
      <button type="button" aria-label=${text.zoomIn} @click=${() => zoomAll('larger')}>+</button>
      ${steps ? step(steps.job, steps.next, '▸', words.part.nextPart) : ''}
    </div>`
}

/** Photos are leafed through in one entry of the history: Back leads out of them.
 * @param {string} job @param {PartPhoto | undefined} to @param {string} sign @param {(label: string) => string} name */
function step(job, to, sign, name) {
  if (!to) return html`<span class="button" aria-hidden="true"></span>`
  const address = addressOf(job, to)
  const leaf = (/** @type {Event} */ event) => {
    event.preventDefault()
    swap(address)
  }
  return html`<a class="button" href=${address} @click=${leaf}
    aria-label=${name(nameOf(to))}>${sign}</a>`
}
