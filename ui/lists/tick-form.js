// What has been done about an item in detail: part of it, on another day, under which number, with a note.
/** @import { ListItem, Tick } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { count } from '../controls/count.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { today } from '../dates.js'
import { submit } from '../edits/queue.js'
import { words } from '../words.js'
import { itemKey } from './key.js'
import { stepFields } from './steps.js'

const text = words.lists

/** @param {string} job @param {ListItem} item @param {Tick} tick @param {boolean} isOrder */
export function tickForm(job, item, tick, isOrder) {
  const key = itemKey(item)
  const name = `tick ${job} ${key}`
  const hasSteps = item.steps.length > 0
  const form = formOf(name, () => ({
    ...tick,
    date: tick.date || today(),
    steps: item.steps.filter(({ done }) => done > 0).map(({ step, done, date }) => ({ step, done, date })),
  }))
  const { entered, refusal, enter, send } = form
  const isMany = item.quantity > 1
  const id = key.replaceAll(/\W+/g, '-')
  const summary = isOrder
    ? (isMany ? text.detailsOrderMany : text.detailsOrder)
    : (isMany ? text.detailsMany : text.detailsOne)
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    // What is not begun has no date.
    const tickOf = (/** @type {Tick} */ { done, date, part_number = '', note, steps, result }) => ({
      ...(hasSteps ? { done: 0, date: '', steps } : { done, date: done > 0 ? date : '' }),
      part_number: part_number.trim(),
      note: note.trim(),
      ...(result ? { result } : {}),
    })
    return foldAfter(event, send((entered) => submit(job, { do: 'tick', item: item.asked, tick: tickOf(entered) })))
  }
  return html`
    <details>
      <summary aria-label=${text.detailsOf(summary, item.what)}>${summary}</summary>
      <form class="entry" aria-label=${text.detailsOf(summary, item.what)} @submit=${save}>
        ${foundDraft(form)}
        ${hasSteps ? stepFields(id, item, entered.steps ?? [], (steps) => enter({ steps })) : ''}
        ${isMany && !hasSteps
          ? count({
            label: text.count(item.quantity),
            value: entered.done,
            set: (done) => enter({ done: Math.min(done, item.quantity) }),
          })
          : ''}
        <div class="pair">
          ${hasSteps ? '' : input({
            id: `${id}-date`,
            label: text.date,
            value: entered.date,
            kind: isPlain(tick.date) ? 'text' : 'date',
            enter: (date) => enter({ date }),
          })}
          ${isOrder
            ? input({
              id: `${id}-number`,
              label: text.partNumber,
              value: entered.part_number ?? '',
              kind: 'code',
              enter: (part_number) => enter({ part_number }),
            })
            : ''}
          ${input({
            id: `${id}-note`,
            label: isOrder ? text.supplier : text.note,
            value: entered.note,
            hint: isOrder ? text.supplierHint : text.noteHint,
            enter: (note) => enter({ note }),
          })}
        </div>
        <p role="alert" class="refusal">${refusal}</p>
        <button aria-label=${text.saveNamed(item.what)}>${text.save}</button>
      </form>
    </details>`
}

/** A date written in the shop's own way, which no calendar field can show. @param {string} date */
const isPlain = (date) => date !== '' && !/^\d{4}-\d\d-\d\d$/.test(date)
