// What the person must answer: readings that are hard to believe, and values that were not taken. They wait, whatever
// is measured meanwhile.
/** @import { Bench, Refused } from './pad.js' */
/** @import { Step } from './walk.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'
import { confirm, forget, goTo, placeName, shown } from './pad.js'
import { keepFocus } from './places.js'
import { stepsOf } from './walk.js'

const text = words.measure

/** @param {Bench} here */
export function questions({ view, phase }) {
  const doubts = view.assessment.parts.flatMap((part) => part.readings.flatMap((reading) => {
    const { quantity, name, spot, doubt } = reading
    if (!doubt || reading.phase !== phase) return []
    const step =
      stepsOf(part, quantity, name).find((one) => one.spot.station === spot.station
        && one.spot.direction === spot.direction)
    return step ? [{ reading, step, doubt }] : []
  }))
  const refused = shown.refused.filter(({ job }) => job === view.job)
  return html`
    <div class="questions" role="log" aria-label=${text.questions} ?hidden=${doubts.length + refused.length === 0}>
      ${refused.map((one) => refusal(one))}
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

/** @param {Refused} refused */
function refusal(refused) {
  const { step, value, why } = refused
  const name = placeName(step)
  const again = () => {
    forget(refused)
    goTo(step)
  }
  return html`
    <div class="question">
      <p><strong>${name}:</strong> ${text.refused(value)} ${why}</p>
      <div class="bar">
        <button type="button" @mousedown=${keepFocus} @click=${() => forget(refused)}>${text.dismiss}</button>
        <button type="button" aria-label=${text.againName(name)} @mousedown=${keepFocus}
          @click=${again}>${text.again}</button>
      </div>
    </div>`
}
