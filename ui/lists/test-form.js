// What a test of pieces showed: how it was made, by whom, and of each piece whether it passed.
/** @import { JobView, ListItem, Part, TestResult, Tick } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { choice, optionsOf } from '../controls/choice.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { day, today } from '../dates.js'
import { submit } from '../edits/queue.js'
import { words } from '../words.js'
import { itemKey } from './key.js'

const text = words.lists

/** @typedef {keyof typeof text.verdicts} Verdict */
/** @typedef {{ how: string, by: string, date: string, verdicts: Record<string, Verdict> }} Entered */

/** @param {JobView} view @param {ListItem} item @param {Tick} tick */
export function testForm(view, item, tick) {
  if (item.tested.length === 0) return ''
  const key = itemKey(item)
  const form = formOf(`test ${view.job} ${key}`, () => startFrom(tick.result))
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    const result = (/** @type {Entered} */ entered) => resultOf(item.tested, entered)
    return foldAfter(
      event,
      send((entered) =>
        submit(view.job, { do: 'tick', item: item.asked, tick: { ...tick, result: result(entered) } })),
    )
  }
  const id = `test-${key.replaceAll(/\W+/g, '-')}`
  return html`
    <details>
      <summary aria-label=${text.resultOf(item.what)}>${text.result}</summary>
      <form class="entry" aria-label=${text.resultOf(item.what)} @submit=${save}>
        ${foundDraft(form)}
        ${item.tested.map((part) => choice({
          name: `${id}-${part}`,
          legend: labelOf(view, part),
          options: optionsOf(text.verdicts),
          value: entered.verdicts[part],
          choose: (verdict) => enter({ verdicts: { ...entered.verdicts, [part]: verdict } }),
        }))}
        ${input({
          id: `${id}-how`,
          label: text.how,
          value: entered.how,
          hint: isWeighed(item) ? text.weighedHint : text.howHint,
          enter: (how) => enter({ how }),
        })}
        <div class="pair">
          ${input({ id: `${id}-by`, label: text.testedBy, value: entered.by, enter: (by) => enter({ by }) })}
          ${input({
            id: `${id}-date`,
            label: text.date,
            value: entered.date,
            kind: 'date',
            enter: (date) => enter({ date }),
          })}
        </div>
        <p role="alert" class="refusal">${refusal}</p>
        <button>${text.saveResult}</button>
      </form>
    </details>`
}

/** Whether the test is on the scales. @param {ListItem} item */
const isWeighed = ({ of }) => of !== null && 'work' in of && of.work === 'weigh'

/** What a test showed, in words. @param {JobView} view @param {TestResult} result */
export const resultInWords = (view, { how, by, date, passed, failed }) =>
  [
    ...(failed.length > 0 ? [text.failed(failed.map((part) => labelOf(view, part)))] : []),
    ...(passed.length > 0 ? [text.passed(passed.map((part) => labelOf(view, part)))] : []),
    how,
    by,
    date && day(date),
  ].filter(Boolean)

/** @param {JobView} view @param {Part} part */
const labelOf = (view, part) => view.assessment.parts.find((own) => own.part === part)?.label ?? part

/** @param {TestResult | undefined} result @returns {Entered} */
const startFrom = (result) => ({
  how: result?.how ?? '',
  by: result?.by ?? '',
  date: result?.date || today(),
  verdicts: Object.fromEntries([
    ...(result?.passed ?? []).map((part) => /** @type {const} */ ([part, 'passed'])),
    ...(result?.failed ?? []).map((part) => /** @type {const} */ ([part, 'failed'])),
  ]),
})

/** @param {Part[]} tested @param {Entered} entered @returns {TestResult} */
const resultOf = (tested, { how, by, date, verdicts }) => ({
  how: how.trim(),
  by: by.trim(),
  date,
  passed: tested.filter((part) => verdicts[part] === 'passed'),
  failed: tested.filter((part) => verdicts[part] === 'failed'),
})
