// Taking an engine in: whose it is, what is known of it, how it is laid out.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue, choicesOf } from '../catalogue.js'
import { screenCautions } from '../controls/cautions.js'
import { choice } from '../controls/choice.js'
import { field } from '../controls/field.js'
import { append } from '../edits/queue.js'
import { toScreen } from '../route.js'
import { words } from '../words.js'
import { ancillaries } from './ancillaries.js'
import { complaints } from './complaints.js'
import { layout } from './layout.js'
import { stripDown } from './strip-down.js'

/** Lines on which people write more than a few words. */
const LONG = new Set(['complaint', 'remarks'])

/** @param {JobView} view */
export function intake(view) {
  return {
    title: words.screens.intake,
    body: html`
      <section aria-labelledby="intake-customer">
        <h2 id="intake-customer">${words.intake.customer}</h2>
        ${catalogue().text_fields.map(({ id, label }) => field({
          key: `${view.job} ${id}`,
          label,
          saved: view.texts[id] ?? '',
          long: LONG.has(id),
          save: (text) => append(view.job, { do: 'fill', field: id, text }),
        }))}
      </section>
      ${complaints(view)}
      ${ancillaries(view)}
      ${stripDown(view)}
      ${layout(view)}
      ${past(view)}
      ${screenCautions('intake')}
      ${view.arrangement ? onward(view.job) : ''}`,
  }
}

/** @param {JobView} view */
const past = (view) => html`
  <section aria-labelledby="intake-past">
    <h2 id="intake-past">${words.intake.past}</h2>
    ${catalogue().history_facts.map(({ id, question }) => choice({
      name: `fact-${id}`,
      legend: question,
      options: choicesOf(catalogue().answers),
      value: view.history[id],
      choose: (answer) => append(view.job, { do: 'recall', fact: id, answer }),
    }))}
  </section>`

/** @param {string} job */
const onward = (job) => html`
  <p class="onward">
    <a class="button" href=${toScreen(job, 'plan')}>${words.intake.toPlan}</a>
    <a class="button primary" href=${toScreen(job, 'marks')}>${words.intake.toMarks}</a>
  </p>`
