// Two photos side by side: before and after, upper and lower shell, or a picture with the one taken in its place.
/** @import { Change } from '../types/api.d.ts' */
/** @import { Screen } from '../frame/screens.js' */
/** @import { PartPhoto } from './all-photos.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { append } from '../edits/queue.js'
import { overlay } from '../markup/overlay.js'
import { photoFrame } from '../markup/photo-frame.js'
import { zoomBar } from '../markup/zoom-bar.js'
import { CHOOSING, swap, toPair } from '../route.js'
import { shownJob } from '../state.js'
import { words } from '../words.js'
import { addressOf, nameOf } from './all-photos.js'

const text = words.part

/** @param {string} job @param {PartPhoto} first @param {PartPhoto} second
 * @param {boolean} isRetake the second was taken in place of the first
 * @returns {Screen} */
export function pair(job, first, second, isRetake) {
  return {
    title: isRetake ? text.whichToKeep : text.sideBySide,
    fills: true,
    body: html`
      <div class="photo-pair">
        ${half(first, isRetake ? text.old : '')}
        ${half(second, isRetake ? text.fresh : '')}
      </div>
      ${isRetake && first.part.drawn[first.photo]?.length ? html`<p class="hint">${text.drawnGoes}</p>` : ''}`,
    bar: html`
      ${zoomBar()}
      ${isRetake ? keepBar(job, first, second) : html`
        <div class="bar">
          <a class="button" href=${toPair(job, first.part.part, first.photo, CHOOSING)}>${text.anotherBeside}</a>
          <a class="button primary" href=${addressOf(job, first)}>${text.backToPhoto}</a>
        </div>`}`,
  }
}

/** @param {PartPhoto} shown @param {string} lead */
function half(shown, lead) {
  const { part, photo } = shown
  const name = [lead, nameOf(shown)].filter(Boolean).join(': ')
  const markups = (part.drawn[photo] ?? []).map(({ markup }) => markup)
  return html`
    <div class="photo-half">
      <p class="photo-name" aria-hidden="true">${name}</p>
      ${photoFrame({ photo, name, over: overlay(photo, markups) })}
    </div>`
}

/** @param {string} job @param {PartPhoto} old @param {PartPhoto} fresh */
function keepBar(job, old, fresh) {
  const { part } = old.part
  const isReady = !fresh.photo.startsWith('blob:')
  const isShown = shownJob()?.shown_photos.some(([own, shown]) => own === part && shown === old.photo) ?? false
  /** @param {PartPhoto} kept @param {...Change} changes */
  const keep = (kept, ...changes) => {
    if (!isReady) return
    if (changes.length > 0) append(job, ...changes)
    swap(addressOf(job, kept))
  }
  /** @type {Change[]} */
  const instead = [
    { do: 'remove-photo', part, photo: old.photo },
    // What the customer was to see, they see in the better picture.
    ...(isShown ? [/** @type {Change} */ ({ do: 'show-photo', part, photo: fresh.photo, shown: true })] : []),
  ]
  const button = (/** @type {string} */ label, /** @type {() => void} */ press, isPrimary = false) => html`
    <button type="button" class=${isPrimary ? 'primary' : ''} aria-disabled=${isReady ? 'false' : 'true'}
      @click=${press}>${label}</button>`
  return html`
    <div class="bar">
      ${button(text.keepOld, () => keep(old, { do: 'remove-photo', part, photo: fresh.photo }))}
      ${button(text.keepBoth, () => keep(fresh))}
      ${button(text.keepNew, () => keep(fresh, ...instead), true)}
    </div>`
}
