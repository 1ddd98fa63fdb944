// The clearances to expect once the new parts are in.
/** @import { Predicted } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { table } from '../controls/table.js'
import { words } from '../words.js'

const text = words.sizes

/** @param {Predicted[]} all */
export function clearances(all) {
  if (all.length === 0) return ''
  const origins = [...new Set(all.map(({ because }) => because))]
  const sources = [...new Set(all.map(({ source }) => source).filter(Boolean))]
  return html`
    <section aria-labelledby="sizes-clearances">
      <h2 id="sizes-clearances">${text.clearances}</h2>
      <p class="hint">${text.clearancesHint}</p>
      ${table({
        label: text.clearances,
        heads: [text.position, text.worstCase, text.likely, text.limits, text.verdict],
        rows: all.map(({ label, worst_case_shown, likely_shown, limits, verdict }) => ({
          head: label,
          mark: verdict === 'outside' ? 'decides' : '',
          cells: [worst_case_shown, likely_shown, limits || text.noLimits, verdict ? text.clearanceVerdicts[verdict] : ''],
        })),
      })}
      ${origins.map((origin) => html`<p class="source">${origins.length === 1 ? origin : `${all.filter(({ because }) => because === origin).map(({ label }) => label).join(', ')}: ${origin}`}</p>`)}
      ${sources.length === 0 ? '' : html`<p class="source">${text.limitsFrom(sources.join('; '))}</p>`}
    </section>`
}
