// How far the job is: what is still open, what the customer has said, and whether it is closed.
/** @import { Approval, JobView, Open } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { folded } from '../controls/folded.js'
import { day, dayOf } from '../dates.js'
import { append } from '../edits/queue.js'
import { savePaper } from '../papers.js'
import { toMeasure, toScreen } from '../route.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { givenBack } from './given-back.js'
import { putAway } from './put-away.js'
import { refusal } from './refusal.js'

const text = words.handOver

/** @param {JobView} view */
export const ending = (view) => html`
  <section aria-labelledby="hand-over-approval">
    <h2 id="hand-over-approval">${text.approval}</h2>
    <p>${text.approvals[stateOf(view.assessment.approval)]}</p>
    <a class="button" href=${toScreen(view.job, 'approval')}>${text.toApproval}</a>
  </section>
  ${givenBack(view)}
  ${refusal(view)}
  <section aria-labelledby="hand-over-open">
    <h2 id="hand-over-open">${text.stillOpen}</h2>
    ${stillOpen(view)}
    <div class="hand-over-ways"><button type="button"
      @click=${() => savePaper(view.job, 'closing-pdf')}>${text.closingPdf}</button></div>
    ${closing(view)}
  </section>
  ${putAway(view)}`

/** The lists with what is open on each; then what stands on no list. @param {JobView} view */
function stillOpen({ job, assessment }) {
  const { lists, still_open } = assessment
  if (still_open.length === 0) return html`<p>${text.nothingOpen}</p>`
  const openOn = (/** @type {string} */ kind) => still_open.filter(({ list }) => list === kind).length
  const beside = still_open.filter(({ list }) => list === null)
  return html`
    <ul class="rows still-open">
      ${lists.filter(({ kind }) => openOn(kind) > 0).map(({ kind, title }) => html`
        <li><a class="row" href=${toScreen(job, 'lists', kind)}>
          <span class="row-name">${title}</span> <span>${text.openItems(openOn(kind))}</span>
        </a></li>`)}
    </ul>
    ${openLines(job, beside.slice(0, FOREMOST))}
    ${beside.length <= FOREMOST ? '' : folded({
      name: `${job} still open`,
      summary: text.moreOpen(beside.length - FOREMOST),
      body: () => openLines(job, beside.slice(FOREMOST)),
    })}`
}

/** What is open beside the lists, before the rest is folded away. */
const FOREMOST = 2

/** @param {string} job @param {Open[]} some */
const openLines = (job, some) => some.length === 0 ? '' : html`
  <ul class="missing">${some.map((open) =>
    html`<li><a href=${wayTo(job, open)}>${capitalised(open.words)}</a></li>`)}</ul>`

/** @param {string} job @param {Open} open */
function wayTo(job, { part, at }) {
  if (part !== null) return toMeasure(job, part)
  if (at === 'strip-down') return toScreen(job, 'intake', 'past')
  return toScreen(job, at === 'ancillaries' ? 'hand-over' : 'approval')
}

/** @param {JobView} view */
function closing({ job, closed_at, assessment }) {
  const open = assessment.still_open.length
  return closed_at === null
    ? html`<p class="hint">${text.closing} ${open > 0
      ? text.closingOpen(open)
      : ''}</p><button type="button" @click=${() => append(job, { do: 'close', closed: true })}>${text.close}</button>`
    : html`<p class="notice">${text.closed(day(dayOf(closed_at)))}</p><button type="button"
      @click=${() => append(job, { do: 'close', closed: false })}>${text.reopen}</button>`
}

/** @param {Approval} approval @returns {keyof typeof text.approvals} */
function stateOf({ shown, answer, since }) {
  if (!shown) return 'none'
  if (!answer) return 'shown'
  return since.some(({ exceeds }) => exceeds) ? 'changed' : 'answered'
}
