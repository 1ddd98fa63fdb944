// One item of a list: what, how many and how far it is done; under that, folded, what put it there and more. Of what
// is held the steps are folded too.
/** @import { JobView, ListItem, Tick } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { cautions } from '../controls/cautions.js'
import { folded } from '../controls/folded.js'
import { day, today } from '../dates.js'
import { append } from '../edits/queue.js'
import { tied } from '../lengths.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { itemKey } from './key.js'
import { stepButtons, stepsInWords } from './steps.js'
import { supplyForm } from './supply.js'
import { resultInWords, testForm } from './test-form.js'
import { tickForm } from './tick-form.js'
import { found, why } from './why.js'

const text = words.lists

/** @type {Tick} */
const OPEN = { done: 0, date: '', part_number: '', note: '' }

/** What was ordered under which number stays when the tick is taken off. */
const UNDONE = { done: 0, date: '' }

/** @param {JobView} view @param {ListItem} item @param {boolean} isOrder
 * @param {boolean} isWhySaid what put it there stands over it already */
export function item(view, item, isOrder, isWhySaid) {
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
  const rest = html`
    ${otherWaits(item)}
    ${isWhySaid ? '' : why(item.because)}
    ${item.mind ? html`<p class="hint">${item.mind}</p>` : ''}
    ${cautions(item.cautions)}
    <div class="line-more">
      ${isFromCause(item) ? '' : found(view, item.parts)}
      ${tickForm(view.job, item, tick, isOrder)}
      ${supplyForm(view, item)}
      ${move(view.job, item)}
      ${takeOff(view.job, item)}
    </div>`
  const isHeld = item.waits_for.length > 0
  const work = html`
    ${hasSteps && !item.is_right ? stepButtons(view.job, item, tick) : ''}
    ${testForm(view, item, tick)}`
  return html`
    <li class=${isDone ? 'item item-done' : 'item'}>
      <div class="item-head">
        ${hasSteps ? '' : html`
          <button type="button" class="item-tick" aria-pressed=${isDone ? 'true' : 'false'}
            aria-label=${text.tick(item.what)} @click=${turn}></button>`}
        ${folded({
          name: `${view.job} item ${itemKey(item)}`,
          look: 'item-what',
          summary: said(view, item, tick),
          body: html`${isHeld ? work : ''}${rest}`,
        })}
      </div>
      ${isHeld ? '' : work}
    </li>`
}

/** What is seen of a line at first; what can hurt is never folded away unsaid.
 * @param {JobView} view @param {ListItem} item @param {Tick} tick */
const said = (view, item, tick) => html`
  <span class="item-said">
    <span>${named(item)}</span>
    ${item.detail ? html`<span class="item-detail">${tied(capitalised(item.detail))}</span>` : ''}
    ${item.is_right ? html`<span class="item-state">${text.isRight}</span>` : ''}
    ${item.tick ? html`<span class="item-state">${far(view, item, tick)}</span>` : ''}
    ${item.cautions.length > 0
      ? html`<span class="item-detail">${words.cautions.about(item.cautions.map(({ about }) => about))}</span>`
      : ''}
    ${item.waits_for.length > 1
      ? html`<span class="item-detail">${text.moreWaits(item.waits_for.length - 1)}</span>`
      : ''}
  </span>`

/** @param {ListItem} item */
const named = ({ quantity, what }) =>
  html`${quantity > 1 ? html`<span>${text.times(quantity)}</span>` : ''} <strong>${what}</strong>`

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

/** What holds it besides the first, which stands over all that it holds. @param {ListItem} item */
const otherWaits = ({ waits_for: [, ...others] }) =>
  others.length === 0 ? '' : html`<ul class="held">${others.map((wait) => html`<li>${wait}</li>`)}</ul>`

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
