// The steps of a line: ordered, came, fitted; sent, back, fitted. One tap each, with today's date; whatever has taken a
// later step has taken the earlier ones too.
/** @import { ItemStep, ListItem, Step, StepTaken, Tick } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { count } from '../controls/count.js'
import { input } from '../controls/input.js'
import { day, today } from '../dates.js'
import { append } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.lists

/** @param {string} job @param {ListItem} item @param {Tick} tick */
export const stepButtons = (job, item, tick) => html`
  <div class="steps" role="group" aria-label=${text.stepsOf(item.what)}>
    ${item.steps.map((own, nth) => {
      const isTaken = own.done >= item.quantity
      return html`
        <button type="button" class="step" aria-pressed=${isTaken ? 'true' : 'false'}
          aria-label=${text.step(own.words, item.what)}
          @click=${() => append(job, { do: 'tick', item: item.asked, tick: turned(item, tick, nth, isTaken) })}>
          ${own.words}</button>`
    })}
  </div>`

/** Takes a step with all that is before it, or takes it back with all that follows.
 * @param {ListItem} item @param {Tick} tick @param {number} nth @param {boolean} isTaken @returns {Tick} */
function turned(item, tick, nth, isTaken) {
  const steps = item.steps.flatMap((own, at) => {
    if (isTaken) return at < nth && own.done > 0 ? [takenOf(own)] : []
    if (at > nth) return own.done > 0 ? [takenOf(own)] : []
    return own.done >= item.quantity
      ? [takenOf(own)]
      : at === nth ? [{ step: own.step, done: item.quantity, date: today() }] : []
  })
  return { ...tick, done: 0, date: '', steps }
}

/** @param {ItemStep} step @returns {StepTaken} */
const takenOf = ({ step, done, date }) => ({ step, done, date })

/** How far each step is: "ordered 3 May · 6 of 8 came 5 May". @param {ListItem} item */
export const stepsInWords = ({ steps, quantity }) =>
  steps
    .filter(({ done }) => done > 0)
    .map(({ words: name, done, date }) =>
      [text.stepFar(name, done, quantity), date && day(date)].filter(Boolean).join(' '))

/** The steps one by one: part of it, on another day.
 * @param {string} id @param {ListItem} item @param {StepTaken[]} taken @param {(taken: StepTaken[]) => void} set */
export function stepFields(id, { steps, quantity }, taken, set) {
  const of = (/** @type {Step} */ step) => taken.find((own) => own.step === step) ?? { step, done: 0, date: '' }
  /** @param {StepTaken} changed */
  const put = (changed) =>
    set(
      steps.map(({ step }) => (step === changed.step ? changed : of(step))).filter(({ done }) => done > 0),
    )
  return steps.map(({ step, words: name }) => {
    const own = of(step)
    const date = own.date || today()
    return html`
      <fieldset class="step-field">
        <legend>${name}</legend>
        ${count({
          label: text.stepCount(name, quantity),
          value: own.done,
          set: (done) => put({ ...own, done: Math.min(done, quantity), date }),
        })}
        ${own.done === 0 ? '' : input({
          id: `${id}-${step}-date`,
          label: text.stepDate(name),
          value: own.date,
          kind: /^\d{4}-\d\d-\d\d$/.test(own.date) ? 'date' : 'text',
          enter: (date) => put({ ...own, date }),
        })}
      </fieldset>`
  })
}
