// One photo, as large as the screen allows.
/** @import { PartView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { photoAddress } from '../backend.js'
import { append } from '../edits/queue.js'
import { go, toPart } from '../route.js'
import { words } from '../words.js'

const text = words.part

/** @param {string} job @param {PartView} part @param {string} photo */
export function enlarged(job, part, photo) {
  const title = text.photo(part.photos.indexOf(photo) + 1, part.label)
  const back = toPart(job, part.part)
  const remove = () => {
    append(job, { do: 'remove-photo', part: part.part, photo })
    go(back)
  }
  return {
    title,
    body: html`<img class="enlarged" src=${photoAddress(photo, 'screen')} alt=${title}>`,
    bar: html`
      <div class="bar">
        <button type="button" @click=${remove}>${text.removePhoto}</button>
        <a class="button primary" href=${back}>${text.back}</a>
      </div>`,
  }
}
