// Taking an engine in, in three steps: whose it is and what is wrong, how it is laid out, what is known of its past.
/** @import { JobView } from '../types/api.d.ts' */
/** @import { Field } from '../controls/field.js' */
/** @import { Screen } from '../frame/screens.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue, choicesOf } from '../catalogue.js'
import { screenCautions } from '../controls/cautions.js'
import { choice } from '../controls/choice.js'
import { field } from '../controls/field.js'
import { append } from '../edits/queue.js'
import { toScreen } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { ancillaries } from './ancillaries.js'
import { complaints } from './complaints.js'
import { contact } from './contact.js'
import { earlier } from './earlier.js'
import { layout, LAYOUT_FORM } from './layout.js'
import { isLayoutWaiting } from './layout-form.js'
import { setFold } from './set-fold.js'
import { stepLinks, stepOf, titleOf, toStep } from './steps.js'
import { stripDown } from './strip-down.js'

const text = words.intake

/** @param {JobView} view @returns {Screen} */
export function intake(view) {
  const step = stepOf(state.route.subject)
  const { body, bar } = DRAWN[step](view)
  return {
    title: titleOf(step),
    body: html`${stepLinks(view, step)}${step === 'past' ? '' : earlier(view)}${body}`,
    bar: html`<div class="bar">${bar}</div>`,
  }
}

/** @type {Record<import('./steps.js').Step, (view: JobView) => { body: unknown, bar: unknown }>} */
const DRAWN = {
  customer: (view) => ({
    body: html`
      <section class="intake-customer" aria-label=${text.customer}>
        ${line(view, 'customer', 'name')}
        ${contact(view)}
        ${line(view, 'machine')}
        ${complaints(view, line(view, 'complaint', 'text', true))}
        ${setFold({
          name: text.further,
          set: FURTHER.map((id) => view.texts[id]).filter(Boolean).join(' · '),
          body: html`
            ${line(view, 'engine-number', 'number')}
            ${line(view, 'use')}
            ${line(view, 'remarks', 'text', true)}`,
        })}
      </section>`,
    bar: html`<a class="button primary" href=${toStep(view.job, 'engine')}>${text.toEngine}</a>`,
  }),
  engine: (view) => ({
    body: html`${layout(view, toStep(view.job, 'past'))}${screenCautions('intake')}`,
    bar: html`
      ${back(view, 'customer')}
      ${isLayoutWaiting(view)
        ? html`<button class="primary" form=${LAYOUT_FORM}>${text.saveAndOn}</button>`
        : html`<a class="button primary" href=${toStep(view.job, 'past')}>${text.toPast}</a>`}`,
  }),
  past: (view) => ({
    body: html`${past(view)}${ancillaries(view)}${stripDown(view)}`,
    bar: html`
      ${back(view, 'engine')}
      ${view.arrangement ? html`
        <a class="button" href=${toScreen(view.job, 'plan')}>${text.toPlan}</a>
        <a class="button primary" href=${toScreen(view.job, 'marks')}>${text.toMarks}</a>` : ''}`,
  }),
}

/** What is asked beside the rest, where it is known. */
const FURTHER = /** @type {const} */ (['engine-number', 'use', 'remarks'])

/** A line of the job's sheet.
 * @param {JobView} view @param {keyof JobView['texts']} id @param {Field['kind']} [kind] @param {boolean} [long] */
const line = (view, id, kind, long) =>
  field({
    key: `${view.job} ${id}`,
    label: catalogue().text_fields.find((row) => row.id === id)?.label ?? '',
    saved: view.texts[id] ?? '',
    kind,
    long,
    save: (text) => append(view.job, { do: 'fill', field: id, text }),
  })

/** @param {JobView} view */
const past = (view) => html`
  <section class="intake-past" aria-label=${text.past}>
    ${catalogue().history_facts.map(({ id, question }) => choice({
      name: `fact-${id}`,
      legend: question,
      options: choicesOf(catalogue().answers),
      value: view.history[id],
      choose: (answer) => append(view.job, { do: 'recall', fact: id, answer }),
    }))}
  </section>`

/** @param {JobView} view @param {import('./steps.js').Step} step */
const back = ({ job }, step) => html`<a class="button" href=${toStep(job, step)}>${text.back}</a>`
