// One item of a list: what, how many, what holds it, what put it there, and how far it is done.
/** @import { JobView, ListItem, Tick } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { cautions } from '../controls/cautions.js'
import { day, today } from '../dates.js'
import { append } from '../edits/queue.js'
import { tied } from '../lengths.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { stepButtons, stepsInWords } from './steps.js'
import { supplyForm } from './supply.js'
import { resultInWords, testForm } from './test-form.js'
import { tickForm } from './tick-form.js'
import { found, toCauses, why } from './why.js'

const text = words.lists

/** @type {Tick} */
const OPEN = { done: 0, date: '', part_number: '', note: '' }

/** What was ordered under which number stays when the tick is taken off. */
const UNDONE = { done: 0, date: '' }

/** @param {JobView} view @param {ListItem} item @param {boolean} isOrder */
export function item(view, item, isOrder) {
  const tick = item.tick ?? OPEN
  const hasSteps = item.steps.length > 0
  const isDone = item.is_right || !!tick.result || farOf(item) >= item.quantity
  const turn = () =>
    append(
      view.job,
      {
        do: 'tick',
        item: item.asked,
        tick: isDone ? { ...tick, ...UNDONE } : { ...tick, done: item.quantity, date: today() },
      },
    )
  return html`
    <li class=${isDone ? 'item item-done' : 'item'}>
      <div class="item-head">
        ${hasSteps ? '' : html`
          <button type="button" class="item-tick" aria-pressed=${isDone ? 'true' : 'false'}
            aria-label=${text.tick(item.what)} @click=${turn}></button>`}
        <div class="item-what">
          <p>${item.quantity > 1
            ? html`<span>${text.times(item.quantity)}</span>`
            : ''} <strong>${item.what}</strong></p>
          ${item.detail ? html`<p>${tied(capitalised(item.detail))}</p>` : ''}
          ${item.is_right ? html`<p class="item-state">${text.isRight}</p>` : ''}
          ${item.tick ? html`<p class="item-state">${far(view, item, tick)}</p>` : ''}
        </div>
        ${hasSteps && !item.is_right ? stepButtons(view.job, item, tick) : ''}
      </div>
      ${held(item.waits_for)}
      ${why(item.because)}
      ${item.mind ? html`<p class="hint">${item.mind}</p>` : ''}
      ${cautions(item.cautions)}
      <div class="line-more">
        ${isFromCause(item) ? toCauses(view.job) : found(view, item.parts)}
        ${testForm(view, item, tick)}
        ${tickForm(view.job, item, tick, isOrder)}
        ${supplyForm(view, item)}
        ${move(view.job, item)}
        ${takeOff(view.job, item)}
      </div>
    </li>`
}

/** How many are back or done. @param {ListItem} item */
const farOf = ({ steps, tick }) => steps.find(({ step }) => step === 'back')?.done ?? tick?.done ?? 0

/** How far a line is, what a test showed, number and note. @param {JobView} view @param {ListItem} item
 * @param {Tick} tick */
const far = (view, item, tick) =>
  (item.steps.length === 0 ? progress(item, tick) : [
    ...stepsInWords(item),
    ...(tick.result ? resultInWords(view, tick.result) : []),
    tick.part_number,
    tick.note,
  ].filter(Boolean).join(' · '))

/** How far it is, when, and the note; an old entry did not tell of how many.
 * @param {Pick<ListItem, 'quantity'>} item @param {Tick} tick */
export const progress = ({ quantity }, { done, date, part_number, note }) =>
  [
    done >= quantity ? text.whole : done > 0 ? text.partly(done, quantity) : '',
    date && day(date),
    part_number,
    note,
  ].filter(Boolean).join(' · ')

/** @param {string[]} waits */
function held(waits) {
  if (waits.length === 0) return ''
  const [first, ...others] = waits
  return html`
    <div class="held">
      <p><span class="held-flag">${text.heldFlag}</span> ${first}</p>
      ${others.length === 0 ? '' : html`
        <details><summary>${text.moreWaits(others.length)}</summary><ul>${others.map((wait) =>
          html`<li>${wait}</li>`)}</ul></details>`}
    </div>`
}

/** Work changes hands with all that belongs to it, till it is behind. @param {string} job @param {ListItem} item */
function move(job, { of, hands, what, is_right }) {
  if (!of || !hands || !('kind' in of) || is_right) return ''
  const other = hands === 'here' ? 'machine-shop' : 'here'
  const label = text.move[other]
  return html`<button type="button" class="quiet" aria-label=${text.moveNamed(label, what)}
    @click=${() => append(job, { do: 'give-work', of, hands: other })}>${label}</button>`
}

/** What is put right follows from a cause, not from one part. @param {ListItem} item */
const isFromCause = ({ asked }) => asked.key.of === 'put-right'

/** What the shop added it can take off again. @param {string} job @param {ListItem} item */
function takeOff(job, { asked, what }) {
  if (asked.key.of !== 'own') return ''
  const { edit } = asked.key
  return html`<button type="button" class="quiet" aria-label=${text.takeOffNamed(what)}
    @click=${() => append(job, { do: 'undo', edit })}>${text.takeOff}</button>`
}
