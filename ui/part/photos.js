// The photos of a part: taken, picked or dropped.
/** @import { OutsideView, PartView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { photoAddress, surroundings } from '../backend.js'
import { fileButton } from '../controls/file-button.js'
import { appendPhotos } from '../edits/queue.js'
import { measure, overlay } from '../markup/overlay.js'
import { toPhoto } from '../route.js'
import { cameraButton, shotsOf } from '../shots/shots.js'
import { words } from '../words.js'

const text = words.part

/** @typedef {PartView | OutsideView} Recorded a part, or what is recorded beside the parts */

/** @param {string} job @param {Recorded} part */
export function photos(job, part) {
  /** @param {Iterable<File>} files */
  const take = (files) => appendPhotos(job, part.part, files)
  /** @param {DragEvent} event */
  const onDrop = (event) => {
    event.preventDefault()
    take(event.dataTransfer?.files ?? [])
  }
  const hasCamera = surroundings.hasCamera || surroundings.phone.take_photo
  return html`
    <section class="photos" aria-label=${text.photos}
      @dragover=${(/** @type {Event} */ event) => event.preventDefault()} @drop=${onDrop}>
      <div class="photo-buttons">
        ${cameraButton(job, { part: part.part }, text.camera, 'primary')}
        ${surroundings.hasCamera && !surroundings.phone.take_photo
          ? fileButton({ label: text.camera, accept: 'image/*', camera: true, primary: true, take })
          : ''}
        ${fileButton({
          label: text.choosePhotos,
          accept: surroundings.galleryAccepts,
          multiple: true,
          primary: !hasCamera,
          take,
        })}
        ${hasCamera ? '' : html`<p class="hint">${text.drop}</p>`}
      </div>
      ${shotsOf(job, { part: part.part })}
      ${part.photos.length === 0 ? '' : html`
        <ul class="thumbs">
          ${repeat(part.photos, (photo) => photo, (photo, nth) => html`<li>${thumb(job, part, photo, nth + 1)}</li>`)}
        </ul>`}
    </section>`
}

/** @param {string} job @param {Recorded} part @param {string} photo @param {number} nth */
function thumb(job, part, photo, nth) {
  const picture = (/** @type {string} */ alt) =>
    html`<img src=${photoAddress(photo, 'thumb')} alt=${alt} width="96" height="96" decoding="async"
      @load=${measure(photo)}>`
  const markups = (part.drawn[photo] ?? []).map(({ markup }) => markup)
  // From memory: it can be opened once it is saved.
  if (photo.startsWith('blob:')) {
    return html`<span class="thumb saving">${picture(`${text.photo(nth, part.label)}, ${text.savingPhoto}`)}</span>`
  }
  return html`<a class="thumb" href=${toPhoto(job, part.part, photo)}
    aria-label=${text.enlarge(nth, part.label)}>${picture('')}${overlay(photo, markups, 'slice')}</a>`
}
