// One tap to a photo of a part: by the device's own camera, else by the web view's; where there is none, files are
// chosen.
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { surroundings } from '../backend.js'
import { fileButton } from '../controls/file-button.js'
import { appendPhotos } from '../edits/photos-in-turn.js'
import { photographPart } from '../edits/queue.js'
import { noteFresh } from './fresh.js'
import { photograph } from './take.js'

/** Whether a photo can be taken at all, or only chosen. */
export const takesPhotos = () => surroundings.phone.take_photo || surroundings.hasCamera

/**
 * @param {object} button
 * @param {string} button.job
 * @param {string} button.part
 * @param {unknown} button.label
 * @param {string} [button.name] the same in full
 * @param {string} [button.look] how it looks
 * @param {(photo: string) => void} [button.named] told its name once it is saved
 */
export function photoButton({ job, part, label, name, look = '', named }) {
  const took = named ?? ((/** @type {string} */ photo) => noteFresh({ job, part, photo }))
  if (surroundings.phone.take_photo) {
    return html`<button type="button" class=${`camera-button ${look}`} aria-label=${name ?? nothing}
      @click=${() => photograph(job, { part }, took)}>${label}</button>`
  }
  const camera = surroundings.hasCamera
  return fileButton({
    label,
    name,
    look,
    camera,
    accept: camera ? 'image/*' : surroundings.galleryAccepts,
    multiple: !camera,
    take: ([first, ...others]) => {
      if (first && others.length === 0) photographPart(job, part, first, camera ? took : undefined)
      else if (first) appendPhotos(job, part, [first, ...others])
    },
  })
}
