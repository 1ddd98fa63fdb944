// Photos from the camera that are in no job yet: how far one is, and those that wait to be taken in.
/** @import { Shot } from '../types/api.d.ts' */
/** @import { Of } from './take.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { surroundings } from '../backend.js'
import { redraw, state } from '../state.js'
import { words } from '../words.js'
import { photograph, sayClosed, stageOf, takeIn, throwAway } from './take.js'

const text = words.shots

/** The one that is about to be put away: it takes a second tap, since the photo is gone then. */
let asked = ''

/** The button that opens the camera; nothing where the device takes no photos for us.
 * @param {string} job @param {Of} of @param {string} label @param {string} look how it looks */
export const cameraButton = (job, of, label, look) =>
  surroundings.phone.take_photo
    ? html`<button type="button" class=${`camera-button ${look}`} @click=${() => photograph(job, of)}>${label}</button>`
    : ''

/** At what the photo shows: how far it is, and whether one waits. The line is there before its words, so that they are
 * read out. @param {string} job @param {Of} of */
export function shotsOf(job, of) {
  const here = state.shots.filter((shot) => shot.job === job && isOf(shot, of))
  return html`${stage(here)} ${offers(here, false)}`
}

/** @param {Shot[]} shots */
function stage(shots) {
  if (!surroundings.phone.take_photo && shots.length === 0) return ''
  const stages = shots.map(stageOf)
  const told = stages.includes('open') ? text.open : stages.includes('saving') ? text.saving : ''
  return html`<p class="hint shot-told" role="status">${told}</p>`
}

/** The same of all parts of a job. @param {string} job */
export function shotsOfJob(job) {
  const here = state.shots.filter((shot) => shot.job === job)
  return html`${stage(here)} ${offers(here, false)}`
}

/** All that wait, with whose engine it is. */
export const allShots = () => offers(state.shots, true)

/** @param {Shot} shot @param {Of} of */
const isOf = (shot, of) => ('part' in of ? shot.part === of.part : shot.ancillary === of.ancillary)

/** @param {Shot[]} shots @param {boolean} withJob */
function offers(shots, withJob) {
  const waiting = shots.filter((shot) => ['waits', 'unheard'].includes(stageOf(shot)))
  if (waiting.length === 0) return ''
  return html`
    <section class="shots" aria-label=${text.title}>
      ${repeat(waiting, ({ shot }) => shot, (shot) => offer(shot, withJob))}
    </section>`
}

/** @param {Shot} shot @param {boolean} withJob */
function offer(shot, withJob) {
  const { label, customer, machine } = shot
  const whose = withJob ? [customer, machine].filter(Boolean).join(' · ') : ''
  const isTaken = stageOf(shot) === 'waits'
  return html`
    <div class="shot">
      <p>
        ${isTaken ? text.waits(label) : text.unheard(label)}
        ${whose ? html`<span class="hint">${whose}</span>` : ''}
      </p>
      <div class="shot-ways">
        ${isTaken
          ? html`
            <button type="button" aria-label=${text.takeInNamed(label)}
              @click=${() => takeIn(shot)}>${text.takeIn}</button>
            ${throwAwayButton(shot)}`
          : html`<button type="button" aria-label=${text.closedNamed(label)}
            @click=${() => sayClosed(shot)}>${text.closed}</button>`}
      </div>
    </div>`
}

/** @param {Shot} shot */
function throwAwayButton(shot) {
  const isAsked = asked === shot.shot
  const press = () => {
    asked = isAsked ? '' : shot.shot
    if (isAsked) throwAway(shot)
    else redraw()
  }
  return html`<button type="button" class="quiet"
    aria-label=${isAsked ? text.throwAwayNowNamed(shot.label) : text.throwAwayNamed(shot.label)}
    @click=${press}>${isAsked ? text.throwAwayNow : text.throwAway}</button>`
}
