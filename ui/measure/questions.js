// What the person must answer: readings that are hard to believe, and values that were not taken. They wait, whatever
// is measured meanwhile.
/** @import { PartView, Quantity, Spot } from '../types/api.d.ts' */
/** @import { Bench, Refused } from './pad.js' */
/** @import { Step } from './walk.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'
import { confirm, forget, goTo, placeName, refusedValues } from './pad.js'
import { keepFocus } from './places.js'
import { stepsOf } from './walk.js'

const text = words.measure

/** @param {Bench} here */
export function questions({ view, phase }) {
  const doubts = view.assessment.parts.flatMap((part) => part.readings.flatMap((reading) => {
    const { quantity, name, spot, doubt } = reading
    if (!doubt || reading.phase !== phase) return []
    const step = stepAt(part, quantity, name, spot)
    return step ? [{ reading, step, doubt }] : []
  }))
  const refused = refusedValues(view.job).flatMap((one) => {
    const part = view.assessment.parts.find(({ part }) => part === one.part)
    const step = part && stepAt(part, one.quantity, one.name, one.spot)
    return step ? [{ one, step }] : []
  })
  return html`
    <div class="questions" role="log" aria-label=${text.questions} ?hidden=${doubts.length + refused.length === 0}>
      ${refused.map(({ one, step }) => refusal(view.job, one, step))}
      ${doubts.map(({ reading, step, doubt }) => question(step, doubt, () => confirm(view.job, step, reading.taken)))}
    </div>`
}

/** @param {Step} step @param {string} doubt @param {() => void} isSo */
function question(step, doubt, isSo) {
  const name = placeName(step)
  return html`
    <div class="question">
      <p><strong>${name}:</strong> ${doubt}</p>
      <div class="bar">
        <button type="button" aria-label=${text.sureName(name)} @mousedown=${keepFocus}
          @click=${isSo}>${text.itIsSo}</button>
        <button type="button" aria-label=${text.againName(name)} @mousedown=${keepFocus}
          @click=${() => goTo(step)}>${text.again}</button>
      </div>
    </div>`
}

/** @param {PartView} part @param {Quantity} quantity @param {string} name @param {Spot} spot */
const stepAt = (part, quantity, name, { station, direction }) =>
  stepsOf(part, quantity, name).find(({ spot }) => spot.station === station && spot.direction === direction)

/** @param {string} job @param {Refused} refused @param {Step} step */
function refusal(job, refused, step) {
  const { value, why } = refused
  const name = placeName(step)
  const again = () => {
    forget(job, refused)
    goTo(step)
  }
  return html`
    <div class="question">
      <p><strong>${name}:</strong> ${text.refused(value)} ${why}</p>
      <div class="bar">
        <button type="button" @mousedown=${keepFocus} @click=${() => forget(job, refused)}>${text.dismiss}</button>
        <button type="button" aria-label=${text.againName(name)} @mousedown=${keepFocus}
          @click=${again}>${text.again}</button>
      </div>
    </div>`
}
