// The customer refuses the work: the engine goes back, with a list of it and the bill for the strip-down alone.
/** @import { GoesBack, JobView, Refusal } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { choice, optionsOf } from '../controls/choice.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { day, today } from '../dates.js'
import { append, submit } from '../edits/queue.js'
import { savePaper } from '../papers.js'
import { words } from '../words.js'

const text = words.refusal

/** @param {JobView} view */
export const refusal = (view) => html`
  <section aria-labelledby="hand-over-refusal">
    <h2 id="hand-over-refusal">${text.title}</h2>
    ${view.refusal ? refused(view.job, view.refusal) : refuse(view)}
  </section>`

/** @param {string} job @param {Refusal} refusal */
const refused = (job, { edit, goes_back, made }) => html`
  <p class="notice">${text.refused(made ? day(made) : '', text.ways[goes_back])}</p>
  <div class="hand-over-ways">
    <button type="button" class="primary" @click=${() => savePaper(job, 'goes-back-pdf')}>${text.pdf}</button>
    <button type="button" @click=${() => append(job, { do: 'undo', edit })}>${text.takeUp}</button>
  </div>`

/** Asked twice: it holds everything that is on the lists. @param {JobView} view */
function refuse({ job }) {
  const form = formOf(`refuse ${job}`, () => ({
    way: /** @type {GoesBack | undefined} */ (undefined),
  }))
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, send(({ way }) => {
      if (!way) throw new Error(text.wayFirst)
      return submit(job, { do: 'refuse', goes_back: way, made: today() })
    }))
  }
  return html`
    <details>
      <summary>${text.begin}</summary>
      <p>${text.hint}</p>
      <form class="entry" aria-label=${text.begin} @submit=${save}>
        ${foundDraft(form)}
        ${choice({
          name: 'goes-back',
          legend: text.how,
          options: optionsOf(text.ways),
          value: entered.way,
          choose: (way) => enter({ way }),
        })}
        <p role="alert" class="refusal">${refusal}</p>
        <button>${text.confirm}</button>
      </form>
    </details>`
}
