// The part that was photographed last: its photo taken again, another one of it, or what is seen on it tagged.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { photoAddress } from '../backend.js'
import { toPart } from '../route.js'
import { freshOf } from '../shots/fresh.js'
import { photoButton } from '../shots/photo-button.js'
import { takeAgain } from '../shots/take-again.js'
import { words } from '../words.js'

const text = words.camera

/** @param {JobView} view */
export function justTaken(view) {
  const fresh = freshOf(view)
  const { outside, parts } = view.assessment
  const part = [...outside, ...parts].find((candidate) => candidate.part === fresh?.part)
  if (!fresh || !part) return ''
  const { job } = view
  return html`
    <section class="just-taken" aria-label=${text.taken}>
      <img src=${photoAddress(fresh.photo, 'thumb')} alt="" width="96" height="96" decoding="async">
      <p>${part.label}</p>
      <div class="just-taken-ways">
        ${takeAgain(fresh, part.label)}
        ${photoButton({ job, part: part.part, label: text.oneMore, name: text.oneMoreOf(part.label) })}
        <a class="button" href=${toPart(job, part.part)} aria-label=${text.tagOf(part.label)}>${text.tag}</a>
      </div>
    </section>`
}
