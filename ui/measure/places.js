// The places of the part in the hand with what was read there, and every reading with a way to take it back.
/** @import { ReadingView } from '../types/api.d.ts' */
/** @import { Bench } from './pad.js' */
/** @import { Step } from './walk.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { folded } from '../controls/folded.js'
import { append } from '../edits/queue.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { goTo } from './pad.js'
import { isOf, standingAt } from './walk.js'

const text = words.measure

/** @param {Bench} here */
export function places(here) {
  const mine = ofPart(here)
  const isAlong = mine.some(({ spot }) => spot.station === 'front' && spot.direction)
  return html`
    <div class="places-frame">
      <ol class=${isAlong ? 'places places-along' : 'places'} aria-label=${text.places}>
        ${repeat(mine, ({ id }) => id, (step) => html`<li>${place(here, step)}</li>`)}
      </ol>
    </div>`
}

/** @param {Bench} here */
const ofPart = ({ steps, part }) => steps.filter((step) => step.part.part === part.part)

/** @param {Bench} here @param {Step} step */
function place(here, step) {
  const reading = standingAt(step, here.phase)
  const isHere = step.id === here.step?.id
  return html`
    <button type="button" class="place" aria-current=${isHere ? 'step' : 'false'} @mousedown=${keepFocus}
      @click=${() => goTo(step)}>
      <span class="place-label">${capitalised(nameOf(step, here))}${step.needed
        ? ''
        : html` <span class="unseen">(${text.optionalPlace})</span>`}</span>
      ${reading
        ? html`<span class="place-value">${reading.value}${reading.doubt
          ? html` <span class="doubt" aria-hidden="true">?</span>`
          : ''}</span>`
        : html`
          <span class="place-value place-open">
            <span aria-hidden="true">${step.needed ? '–' : '(–)'}</span><span class="unseen">${text.notRead}</span>
          </span>`}
    </button>`
}

/** Where a walk reads two quantities of a part, the quantity names the place. @param {Step} step @param {Bench} here */
const nameOf = (step, here) =>
  step.label || (ofPart(here).length > 1 ? step.words : here.step?.words ?? step.words)

/** A tap leaves the keyboard with the entry. @param {Event} event */
export const keepFocus = (event) => event.preventDefault()

/** @param {Bench} here @param {boolean} isOpen at first */
export function readings(here, isOpen) {
  const { view, part, phase } = here
  const what = ofPart(here)
  const taken = part.readings.filter((reading) => what.some((step) => isOf(reading, step, phase)))
  const listed = taken.filter((reading, nth) => !isRepeated(reading, taken.slice(nth + 1)))
  if (listed.length === 0) return ''
  const order = (/** @type {ReadingView} */ reading) => what.findIndex((step) => isAt(reading, step))
  const sorted = listed
    .map((reading, nth) => ({ reading, nth }))
    .sort((a, b) => order(a.reading) - order(b.reading) || a.nth - b.nth)
  return folded({
    name: `${view.job} readings`,
    isOpen,
    summary: html`
      <span class="fold-name">${text.readings}</span> <span class="fold-facts">${listed.length}</span>`,
    body: html`
      <ul class="readings">
        ${repeat(
          sorted,
          ({ reading, nth }) => reading.edit || nth,
          ({ reading }) => line(view.job, reading, what.find((step) => isAt(reading, step))),
        )}
      </ul>`,
  })
}

/** @param {ReadingView} reading @param {Step} step */
const isAt = (reading, step) =>
  reading.quantity === step.quantity
    && reading.spot.station === step.spot.station
    && reading.spot.direction === step.spot.direction

/** A reading that was only confirmed stands once. @param {ReadingView} reading @param {ReadingView[]} later */
const isRepeated = ({ taken: { value }, quantity, spot }, later) => later.some(({ taken, ...other }) =>
  taken.sure && taken.value === value && other.quantity === quantity
  && other.spot.station === spot.station && other.spot.direction === spot.direction)

/** @param {string} job @param {ReadingView} reading @param {Step | undefined} step */
function line(job, reading, step) {
  const label = capitalised(step ? step.label || step.words : text.somewhere)
  const { edit, value } = reading
  const takeBack = () => edit && append(job, { do: 'undo', edit })
  return html`
    <li class="reading">
      <span class="reading-place">${label}</span>
      <span class="reading-value">
        ${reading.stands
          ? html`<strong>${value}</strong>`
          : html`<s>${value}</s> <span class="unseen">${text.replaced}</span>`}
        ${reading.taken.set_to ? html`<span class="hint">${text.setToShort(reading.taken.set_to)}</span>` : ''}
        ${reading.instrument ? html`<span class="hint">${reading.instrument}</span>` : ''}
      </span>
      <button type="button" class="quiet" aria-disabled=${edit ? 'false' : 'true'}
        aria-label=${text.takeBackName(label, value)}
        @click=${takeBack}>${text.takeBack}</button>
    </li>`
}
