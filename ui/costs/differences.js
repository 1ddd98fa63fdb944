// Line by line what changed since the first estimate, and why.
/** @import { Difference } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { shown } from '../amounts.js'
import { folded } from '../controls/folded.js'
import { words } from '../words.js'

const text = words.costs

/** @param {string} job @param {Difference[]} all @param {string} currency */
export const differences = (job, all, currency) =>
  all.length === 0
    ? html`<p>${text.differencesNone}</p>`
    : all.map(({ what, estimated, now, more, because }, place) => folded({
      name: `${job} difference ${place} ${what}`,
      summary: html`
        <span class="cost-name">${what}</span>
        <span class="fold-amount">${more > 0 ? '+' : ''}${shown(more, currency)}</span>`,
      body: html`
        <p>${because}</p>
        <dl class="totals">
          <div><dt>${text.columns.estimated}</dt><dd>${shown(estimated, currency)}</dd></div>
          <div><dt>${text.columns.now}</dt><dd>${shown(now, currency)}</dd></div>
        </dl>`,
    }))
