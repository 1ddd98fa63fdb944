// What came with the engine: starter, brackets, carburettor. Each with a photo and a remark; it is given back with it.
/** @import { Ancillary, JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { photoAddress, surroundings } from '../backend.js'
import { fileButton } from '../controls/file-button.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { append, photographAncillary, submit } from '../edits/queue.js'
import { cameraButton, shotsOf } from '../shots/shots.js'
import { words } from '../words.js'
import { setFold } from './set-fold.js'

const text = words.ancillaries

/** @param {JobView} view */
export function ancillaries({ job, ancillaries }) {
  const form = formOf(`ancillary ${job}`, () => ({ what: '', remark: '' }))
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return send(({ what, remark }) =>
      submit(job, { do: 'add-ancillary', item: { what: what.trim(), remark: remark.trim() } }))
  }
  return setFold({
    name: text.title,
    set: form.touched ? words.intake.notSaved : ancillaries.map(({ what }) => what).join(', ') || text.none,
    body: html`
      <p class="hint">${text.hint}</p>
      ${ancillaries.length === 0 ? '' : html`
        <ul class="quote">${repeat(ancillaries, ({ edit }) => edit, (item) => line(job, item))}</ul>`}
      <form class="entry" aria-label=${text.add} @submit=${save}>
        ${foundDraft(form)}
        <div class="pair">
          ${input({
            id: 'ancillary-what',
            label: text.what,
            value: entered.what,
            enter: (what) => enter({ what }),
            enterKey: 'next',
          })}
          ${input({
            id: 'ancillary-remark',
            label: text.remark,
            value: entered.remark,
            enter: (remark) => enter({ remark }),
            enterKey: 'done',
          })}
        </div>
        <p role="alert" class="refusal">${refusal}</p>
        <button>${text.add}</button>
      </form>`,
  })
}

/** @param {string} job @param {Ancillary} item */
function line(job, { edit, what, remark, photo }) {
  const take = (/** @type {File[]} */ [file]) => file && photographAncillary(job, edit, file)
  return html`
    <li class="quote-line">
      <div class="quote-head"><h3>${what}</h3></div>
      ${remark ? html`<p class="why">${remark}</p>` : ''}
      ${photo
        ? html`<span class="thumb"><img src=${photoAddress(photo, 'thumb')} alt=${text.photo(what)} width="96"
          height="96" decoding="async"></span>`
        : ''}
      <div class="photo-buttons">
        ${cameraButton(job, { ancillary: edit }, text.camera(what), '')}
        ${surroundings.hasCamera && !surroundings.phone.take_photo
          ? fileButton({ label: text.camera(what), accept: 'image/*', camera: true, take })
          : ''}
        ${fileButton({ label: text.choosePhoto(what), accept: surroundings.galleryAccepts, take })}
        <button type="button" class="quiet" aria-label=${text.dropNamed(what)}
          @click=${() => append(job, { do: 'remove-ancillary', item: edit })}>${text.drop}</button>
      </div>
      ${shotsOf(job, { ancillary: edit })}
    </li>`
}
