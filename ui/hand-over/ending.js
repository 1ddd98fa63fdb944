// How far the job is: what is open on the lists, what the customer has said, and whether it is closed.
/** @import { Approval, JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { append } from '../edits/queue.js'
import { toSheet } from '../route.js'
import { words } from '../words.js'

const text = words.handOver

/** @param {JobView} view */
export function ending({ job, closed, assessment }) {
  const lists = assessment.lists.filter(({ items, done }) => items.length > done)
  const open = lists.reduce((sum, { items, done }) => sum + items.length - done, 0)
  return html`
    <section aria-labelledby="hand-over-approval">
      <h2 id="hand-over-approval">${text.approval}</h2>
      <p>${text.approvals[stateOf(assessment.approval)]}</p>
      <a class="button" href=${toSheet(job, 'approval')}>${text.toApproval}</a>
    </section>
    <section aria-labelledby="hand-over-open">
      <h2 id="hand-over-open">${text.stillOpen}</h2>
      ${lists.length === 0 ? html`<p>${text.nothingOpen}</p>` : html`
        <ul class="rows">
          ${lists.map(({ kind, title, items, done }) => html`
            <li><a class="row" href=${toSheet(job, 'lists', kind)}>
              <span class="row-name">${title}</span> <span>${text.openItems(items.length - done)}</span>
            </a></li>`)}
        </ul>`}
      ${closed
        ? html`<p class="notice">${text.closed}</p><button type="button" @click=${() => append(job, { do: 'close', closed: false })}>${text.reopen}</button>`
        : html`<p class="hint">${text.closing} ${open > 0 ? text.closingOpen(open) : ''}</p><button type="button" @click=${() => append(job, { do: 'close', closed: true })}>${text.close}</button>`}
    </section>`
}

/** @param {Approval} approval @returns {keyof typeof text.approvals} */
function stateOf({ shown, answer, since }) {
  if (!shown) return 'none'
  if (!answer) return 'shown'
  return since.length > 0 ? 'changed' : 'answered'
}
