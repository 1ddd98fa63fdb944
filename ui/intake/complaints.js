// What the customer complained of: picked from the trade's words, several at once; and in their own words.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue } from '../catalogue.js'
import { append } from '../edits/queue.js'
import { words } from '../words.js'
import { setFold } from './set-fold.js'

const text = words.intake

/** @param {JobView} view @param {unknown} ownWords the field for them */
export function complaints({ job, complaints, texts }, ownWords) {
  const rows = catalogue().complaints
  const told = rows.filter(({ id }) => complaints.includes(id)).map(({ words }) => words)
  return setFold({
    name: text.complaints,
    set: [...told, texts.complaint].filter(Boolean).join(' · ') || text.nothingYet,
    body: html`
      <p class="hint">${text.complaintsHint}</p>
      <div class="picks">${rows.map(({ id, words: told }) => {
        const isTold = complaints.includes(id)
        return html`
          <button type="button" class="pick" aria-pressed=${isTold ? 'true' : 'false'}
            @click=${() => append(job, { do: 'complain', complaint: id, told: !isTold })}>${told}</button>`
      })}</div>
      ${ownWords}`,
  })
}
