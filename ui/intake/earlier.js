// The engine that comes back: what was done to it then is offered as what is found now.
/** @import { JobLine, JobView, SizeGroup } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { listEarlier, openJob } from '../backend.js'
import { day, dayOf } from '../dates.js'
import { append } from '../edits/queue.js'
import { toScreen } from '../route.js'
import { attempt, redraw } from '../state.js'
import { words } from '../words.js'

const text = words.earlier
/** A nanometre counts a millionth of a millimetre. */
const NM = 1e6

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
      opened = await openJob(job)
    })
  const isOpen = opened?.job === job
  return html`
    <p><strong>${day(dayOf(closed_at ?? changed_at))}</strong> ${[customer, machine].filter(Boolean).join(' · ')}</p>
    <div class="bar-inline">
      <a class="button" href=${toScreen(job, 'hand-over')}>${text.papers}</a>
      <a class="button" href=${toScreen(job, 'causes')}>${text.causes}</a>
      <button type="button" aria-expanded=${isOpen ? 'true' : 'false'} @click=${open}>${text.asLeft}</button>
    </div>
    ${isOpen && opened ? asLeft(view, opened) : ''}`
}

/** Each group in the size in which it was left, and its layout. @param {JobView} view @param {JobView} was */
function asLeft(view, was) {
  const groups = was.assessment.sizing.groups.filter(({ size }) => size !== null)
  const take = (/** @type {SizeGroup} */ group, /** @type {number} */ size) =>
    append(view.job, { do: 'found-size', group, size: size === 0 ? null : `${size / NM} mm` })
  const { arrangement } = was
  return html`
    <ul class="as-left">
      ${!view.arrangement && arrangement ? html`
        <li>
          <span>${was.assessment.engine}</span>
          <button type="button"
            @click=${() => append(view.job, { do: 'arrange', arrangement })}>${text.takeLayout}</button>
        </li>` : ''}
      ${groups.map(({ group, size, size_shown, finished_shown }) => html`
        <li>
          <span>${text.groups[group]}: ${[size_shown, finished_shown].filter(Boolean).join(', ')}</span>
          ${view.arrangement && (size ?? 0) !== 0
            ? html`<button type="button" @click=${() => take(group, size ?? 0)}>${text.take}</button>`
            : ''}
        </li>`)}
    </ul>`
}
