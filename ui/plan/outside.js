// What is looked at before the engine is opened and beside its parts: it tells how the damage got in.
/** @import { JobView, OutsideView } from '../types/api.d.ts' */
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { swatch } from '../hatching/key.js'
import { toPart } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'

const text = words.plan

/** Unfolded until the first part has been looked at. @param {JobView} view */
export function outside({ job, assessment }) {
  const all = assessment.outside
  const looked = all.filter(({ seen }) => seen !== 'not-looked').length
  return html`
    <details class="before" ?open=${assessment.progress.looked === 0}>
      <summary>${text.before(looked, all.length)}</summary>
      <ul class="rows">${all.map((here) => html`<li>${row(job, here)}</li>`)}</ul>
    </details>`
}

/** What was found, in words. @param {Pick<OutsideView, 'seen' | 'findings'>} here */
export const foundInWords = ({ seen, findings }) =>
  findings.length === 0
    ? text.states[seen]
    : findings.map(({ name, grade }) => words.part.tagged(name, grade)).join('; ')

/** @param {string} job @param {OutsideView} here */
const row = (job, here) => html`
  <a class="row" href=${toPart(job, here.part)} aria-label="${here.label}, ${foundInWords(here)}"
    aria-current=${state.route.part === here.part ? 'true' : nothing}>
    ${swatch(here.worst, here.seen)}
    <span class="row-name">${here.label}</span>
    <span>${foundInWords(here)}</span>
  </a>`
