// Line by line what changed since the first estimate, and why.
/** @import { Difference } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { shown } from '../amounts.js'
import { table } from '../controls/table.js'
import { words } from '../words.js'

const text = words.costs

/** @param {Difference[]} all @param {string} currency */
export const differences = (all, currency) => html`
  <section aria-labelledby="differences">
    <h2 id="differences">${text.differences}</h2>
    ${all.length === 0 ? html`<p>${text.differencesNone}</p>` : table({
      label: text.differences,
      heads: Object.values(text.columns),
      rows: all.map(({ what, estimated, now, more, because }) => ({
        head: what,
        cells: [
          shown(estimated, currency),
          shown(now, currency),
          `${more > 0 ? '+' : ''}${shown(more, currency)}`,
          because,
        ],
      })),
    })}
  </section>`
