// The clearances to expect once the new parts are in.
/** @import { Predicted } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue, conformityOf } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { table } from '../controls/table.js'
import { state } from '../state.js'
import { words } from '../words.js'

const text = words.sizing

/** @param {string} job @param {Predicted[]} all */
export function clearances(job, all) {
  if (all.length === 0) return ''
  const sources = [...new Set(all.map(({ source }) => source).filter(Boolean))]
  /** What is outside or too close is said before it is unfolded. @type {[string, number][]} */
  const judged = catalogue().conformities
    .filter(({ id }) => id !== 'within')
    .map(({ id, of_what_comes }) => [of_what_comes, all.filter(({ verdict }) => verdict === id).length])
  return html`
    <section aria-labelledby="sizes-clearances">
      <h2 id="sizes-clearances">${text.clearances}</h2>
      ${folded({
        name: `${job} sizes clearances`,
        isOpen: state.wide,
        summary: html`${text.positions(all.length)}
          ${judged.map(([words, n]) => n === 0 ? '' : html`<span class="fold-facts">${n} ${words}</span>`)}`,
        body: html`
          <p class="hint">${text.clearancesHint}</p>
          ${table({
            label: text.clearances,
            heads: [text.position, text.worstCase, text.likely, text.limits, text.verdict, text.workedOutFrom],
            rows: alike(all).map(row),
          })}
          ${sources.length === 0 ? '' : html`<p class="source">${text.limitsFrom(sources.join('; '))}</p>`}`,
      })}
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
