// The answer that most parts get: looked at and clean.
/** @import { Recorded } from './photos.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { append, submit } from '../edits/queue.js'
import { tell } from '../edits/told.js'
import { swatch } from '../hatching/key.js'
import { swap, toPart } from '../route.js'
import { attempt } from '../state.js'
import { words } from '../words.js'

const text = words.part
/** So soon nobody has looked at the next part: it is the second tap of a double tap. */
const TOO_SOON = 500
let goneOnAt = 0

/** Records it and stays here. @param {string} job @param {Recorded} open @param {string} [look] how the button looks */
export function clean(job, { part, seen }, look = '') {
  const isClean = seen === 'clean'
  return html`
    <button type="button" class=${`clean ${look}`} aria-pressed=${isClean ? 'true' : 'false'}
      @click=${() => !isClean && append(job, { do: 'clean', part })}>
      ${swatch(null)} <span>${seen === 'worn' ? text.cleanAfterAll : text.clean}</span></button>`
}

/** Records it and goes on to the next part, where just this can be taken back.
 * @param {string} job @param {Recorded} open @param {Recorded} next */
export const cleanOn = (job, { part, label }, next) => {
  const at = toPart(job, next.part)
  const sentence = text.isClean(label)
  const press = () => attempt(async () => {
    if (Date.now() - goneOnAt < TOO_SOON) return
    goneOnAt = Date.now()
    const saving = submit(job, { do: 'clean', part })
    tell({ at, sentence })
    swap(at)
    const { last_edit } = await saving
    if (last_edit) tell({ at, sentence, takeBack: () => append(job, { do: 'undo', edit: last_edit }) })
  })
  return html`
    <button type="button" class="primary onward-step" @click=${press}>
      <span class="onward-lead">${text.cleanOn}</span> <span class="onward-name">${next.label}</span>
    </button>`
}
