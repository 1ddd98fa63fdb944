// Worn bores of tappets: how they are mended, to which size, and which they are.
/** @import { JobView, TappetBores } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { kindOf } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { table } from '../controls/table.js'
import { toMeasure } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.sizing

/** @param {JobView} view */
export function tappetBores({ job, assessment }) {
  const plan = assessment.sizing.tappet_bores
  if (!plan) return ''
  const isSettled = plan.size !== null && plan.waits_for.length === 0
  return html`
    <section class="size-group" aria-labelledby="tappet-bores">
      <h2 id="tappet-bores">
        ${capitalised(text.several(kindOf('tappet-bore').name))}
        <span class=${isSettled ? 'mark-free' : 'mark-held'}>${isSettled ? text.settled : text.open}</span>
      </h2>
      <p class="size-lead">${lead(plan)}</p>
      <p>${capitalised(plan.because)}</p>
      ${[plan.no_size, ...plan.waits_for].filter(Boolean).map((sentence) => html`<p>${capitalised(sentence)}</p>`)}
      ${folded({
        name: `${job} sizes tappet-bores`,
        isOpen: state.wide,
        summary: html`${text.each} <span class="fold-facts">${text.withFaults(plan.bores.length)}</span>`,
        body: table({
          label: capitalised(text.several(kindOf('tappet-bore').name)),
          heads: [text.part, text.found, text.faults],
          rows: plan.bores.map(({ part, label, found_shown, fault }) => ({
            head: html`<a href=${toMeasure(job, part)}>${label}</a>`,
            cells: [found_shown || text.notMeasured, html`<span class="fault">${capitalised(fault)}</span>`],
          })),
        }),
      })}
    </section>`
}

/** "Ream: 0.010 in oversize, finished 0.8752 to 0.8757 in." @param {TappetBores} plan */
const lead = ({ way, size_shown, finished_shown }) =>
  text.mendBores(way === 'bush' ? 'bush' : 'ream', size_shown, finished_shown)
