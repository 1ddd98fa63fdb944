// The clearances to expect once the new parts are in.
/** @import { Predicted } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { conformityOf } from '../catalogue.js'
import { table } from '../controls/table.js'
import { words } from '../words.js'

const text = words.sizing

/** @param {Predicted[]} all */
export function clearances(all) {
  if (all.length === 0) return ''
  const sources = [...new Set(all.map(({ source }) => source).filter(Boolean))]
  return html`
    <section aria-labelledby="sizes-clearances">
      <h2 id="sizes-clearances">${text.clearances}</h2>
      <p class="hint">${text.clearancesHint}</p>
      ${table({
        label: text.clearances,
        heads: [text.position, text.worstCase, text.likely, text.limits, text.verdict, text.workedOutFrom],
        rows: alike(all).map(row),
      })}
      ${sources.length === 0 ? '' : html`<p class="source">${text.limitsFrom(sources.join('; '))}</p>`}
    </section>`
}

/** Positions of which the same is to be expected stand in one row. @param {Predicted[]} all @returns {Predicted[][]} */
function alike(all) {
  /** @type {Map<string, Predicted[]>} */
  const rows = new Map()
  for (const one of all) {
    const { part, label, ...same } = one
    const key = JSON.stringify(same)
    rows.set(key, [...(rows.get(key) ?? []), one])
  }
  return [...rows.values()]
}

/** @param {Predicted[]} same */
function row(same) {
  const [first] = same
  if (!first) throw new Error('A row stands for at least one position.')
  const { worst_case_shown, likely_shown, limits, verdict, because } = first
  return {
    head: same.map(({ label }) => label).join(', '),
    mark: verdict === 'outside' ? 'decides' : '',
    cells: [
      worst_case_shown,
      likely_shown,
      limits || text.noLimits,
      verdict ? conformityOf(verdict).of_what_comes : '',
      because,
    ],
  }
}
