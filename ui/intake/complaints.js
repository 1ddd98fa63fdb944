// What the customer complained of: picked from the trade's words, several at once.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue } from '../catalogue.js'
import { append } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.intake

/** @param {JobView} view */
export const complaints = ({ job, complaints }) => html`
  <section aria-labelledby="intake-complaints">
    <h2 id="intake-complaints">${text.complaints}</h2>
    <p class="hint">${text.complaintsHint}</p>
    <div class="picks">${catalogue().complaints.map(({ id, words: told }) => {
      const isTold = complaints.includes(id)
      return html`
        <button type="button" class="pick" aria-pressed=${isTold ? 'true' : 'false'}
          @click=${() => append(job, { do: 'complain', complaint: id, told: !isTold })}>${told}</button>`
    })}</div>
  </section>`
