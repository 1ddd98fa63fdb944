// The engine that comes back: what was done to it then is offered as what is found now.
/** @import { JobLine, JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { listEarlier, openJob, surroundings } from '../backend.js'
import { day, dayOf } from '../dates.js'
import { openPaper, savePaper } from '../papers.js'
import { attempt, redraw } from '../state.js'
import { words } from '../words.js'
import { asLeft } from './as-left.js'

const text = words.earlier

/** Jobs with the same engine number, as they were read last. */
let read = { job: '', lines: /** @type {JobLine[]} */ ([]) }
/** The one that was opened here. @type {JobView | null} */
let opened = null

/** @param {string} job */
export async function readBefore(job) {
  const lines = await listEarlier(job)
  if (read.job !== job) opened = null
  read = { job, lines }
  redraw()
}

/** Nothing where the engine's number is not known, or was never here. @param {JobView} view */
export function earlier(view) {
  if (read.job !== view.job || read.lines.length === 0) return ''
  return html`
    <section class="earlier" aria-labelledby="earlier">
      <h2 id="earlier">${text.title}</h2>
      ${read.lines.map((line) => then(view, line))}
    </section>`
}

/** @param {JobView} view @param {JobLine} line */
function then(view, { job, customer, machine, changed_at, closed_at }) {
  const open = () =>
    attempt(async () => {
      opened = opened?.job === job ? null : await openJob(job)
    })
  const paper = surroundings.opensDocuments ? openPaper : savePaper
  const isOpen = opened?.job === job
  return html`
    <p><strong>${day(dayOf(closed_at ?? changed_at))}</strong> ${[customer, machine].filter(Boolean).join(' · ')}</p>
    <div class="bar-inline">
      <button type="button" @click=${() => paper(job, 'closing-pdf')}>${text.closing}</button>
      <button type="button" aria-expanded=${isOpen ? 'true' : 'false'} @click=${open}>${text.asLeft}</button>
    </div>
    ${isOpen && opened ? asLeft(view, opened) : ''}`
}
