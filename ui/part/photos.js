// The photos of a part: taken, picked or dropped.
/** @import { JobView, OutsideView, PartView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { photoAddress, surroundings } from '../backend.js'
import { lacking } from '../camera/order.js'
import { fileButton } from '../controls/file-button.js'
import { appendPhotos } from '../edits/photos-in-turn.js'
import { measure, overlay } from '../markup/overlay.js'
import { toPhoto, toScreen } from '../route.js'
import { freshOf } from '../shots/fresh.js'
import { photoButton, takesPhotos } from '../shots/photo-button.js'
import { shotsOf } from '../shots/shots.js'
import { takeAgain } from '../shots/take-again.js'
import { words } from '../words.js'

const text = words.part

/** @typedef {PartView | OutsideView} Recorded a part, or what is recorded beside the parts */

/** @param {JobView} view @param {Recorded} part */
export function photos(view, part) {
  const { job } = view
  /** @param {Iterable<File>} files */
  const take = (files) => appendPhotos(job, part.part, files)
  /** @param {DragEvent} event */
  const onDrop = (event) => {
    event.preventDefault()
    take(event.dataTransfer?.files ?? [])
  }
  return html`
    <section class="photos" aria-label=${text.photos}
      @dragover=${(/** @type {Event} */ event) => event.preventDefault()} @drop=${onDrop}>
      <div class="photo-buttons">
        ${takesPhotos() ? photoButton({ job, part: part.part, label: text.camera, look: 'primary' }) : ''}
        ${fileButton({
          label: text.choosePhotos,
          accept: surroundings.galleryAccepts,
          multiple: true,
          primary: !takesPhotos(),
          take,
        })}
        ${takesPhotos() ? '' : html`<p class="hint">${text.drop}</p>`}
      </div>
      ${shotsOf(job, { part: part.part })}
      ${part.photos.length === 0 ? '' : html`
        <ul class="thumbs">
          ${repeat(part.photos, (photo) => photo, (photo, nth) => html`<li>${thumb(job, part, photo, nth + 1)}</li>`)}
          ${afterwards(view, part)}
        </ul>`}
    </section>`
}

/** What a photo is followed by that was just taken: it is taken again, or the next part comes before the camera.
 * @param {JobView} view @param {Recorded} part */
function afterwards(view, part) {
  const fresh = freshOf(view)
  if (fresh?.part !== part.part) return ''
  const [next] = lacking(view, part.part)
  return html`
    <li>${takeAgain(fresh, part.label)}</li>
    ${next
      ? html`<li><a class="button" href=${toScreen(view.job, 'camera', next.part)}
        >${words.camera.nextPhoto(next.label)}</a></li>`
      : ''}`
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
