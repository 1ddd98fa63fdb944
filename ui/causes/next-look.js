// The look that would settle most: as a way to it, and on the part itself while it is taken.
/** @import { JobView, NextLook } from '../types/api.d.ts' */
/** @import { Recorded } from '../part/photos.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { getNextLook } from '../backend.js'
import { kindOf, zonesOf } from '../catalogue.js'
import { stillZones } from '../part/zones.js'
import { toLook, toMeasure, toScreen, walkOn } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { labelsOf } from './evidence.js'

const text = words.causes

/** As it was read last; null where no look would help. @type {{ job: string, look: NextLook | null } | null} */
let read = null

/** @param {string} job */
export async function readNextLook(job) {
  read = { job, look: await getNextLook(job) }
}

/** Undefined until it is read. @param {JobView} view */
export const nextLook = ({ job }) => (read?.job === job ? read.look : undefined)

/** Why. Until it is read its place is kept: what stands below must not move under a thumb.
 * @param {string} heading @param {NextLook | undefined} look */
export const lookSentence = (heading, look) => html`
  <h2 id="next-look">${heading}</h2>
  <p>${look?.sentence ?? words.frame.loading}</p>`

/** The way to it; from one look to the next it is a walk.
 * @param {JobView} view @param {NextLook} look @param {string} [short] where there is little room: in the walk's bar */
export function lookButton(view, look, short) {
  const part = labelsOf(view).get(look.part) ?? look.part
  const name = look.measure ? text.measureNext(part) : text.lookNext(part)
  const way = look.measure ? toMeasure(view.job, look.part) : toLook(view.job, look)
  return html`<a class="button primary" href=${way} aria-label=${name}
    @click=${short ? walkOn : null}>${short ?? name}</a>`
}

/** On the part that was opened for the look: where to look and why; once that has been answered, the look after it.
 * @param {JobView} view @param {Recorded} part */
export function lookHere(view, part) {
  const { isLook, tag, zone } = state.route
  if (!isLook) return ''
  const look = nextLook(view)
  if (look === undefined) return ''
  if (look && isAnswered(look, part)) {
    return html`<section class="next-look" aria-labelledby="next-look">${lookSentence(text.lookAfter, look)}</section>`
  }
  const { zone_map } = kindOf(part.kind)
  const label = zonesOf(zone_map).find(({ id }) => id === zone)?.label ?? ''
  return html`
    <section class="next-look" aria-labelledby="next-look">
      <h2 id="next-look">${look ? text.lookHere : text.settled}</h2>
      <p>${look ? look.sentence : text.nothingMore}</p>
      ${look && label && !tag ? html`
        <p class="look-zone">${capitalised(label)}</p>
        ${stillZones(zone_map, zone)}` : ''}
    </section>`
}

/** The ways on from a look: back to the causes, and to the look after it.
 * @param {JobView} view @param {Recorded} part */
export function lookSteps(view, part) {
  const look = nextLook(view)
  return {
    back: html`<a class="button" href=${toScreen(view.job, 'causes')}>${words.screens.causes}</a>`,
    on: look && isAnswered(look, part)
      ? lookButton(view, look, text.nextShort)
      : html`<span class="button" aria-hidden="true"></span>`,
  }
}

/** Whether the program already asks for another look than the one for which the part was opened.
 * @param {NextLook} look @param {Recorded} part */
const isAnswered = (look, part) => look.part !== part.part || (look.tag ?? '') !== state.route.tag
