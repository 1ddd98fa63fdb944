// Where two ways serve, both are priced side by side.
/** @import { Ways } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { capitalised } from '../catalogue.js'
import { shown } from '../money/amount.js'
import { words } from '../words.js'

const text = words.costs

/** @param {Ways[]} all @param {string} currency */
export function ways(all, currency) {
  if (all.length === 0) return ''
  return html`
    <section aria-labelledby="ways">
      <h2 id="ways">${text.ways}</h2>
      ${all.map(({ what, ways, because }) => html`
        <h3>${what}</h3>
        <ul class="ways">
          ${ways.map((way, place) => html`
            <li class=${place === 0 ? 'way way-first' : 'way'}>
              ${place === 0 ? html`<p class="way-flag">${text.recommended}</p>` : ''}
              <p>${capitalised(way.words)}</p>
              <p class="amount"><strong>${shown(way.net, currency)}</strong></p>
              ${place === 0 ? html`<p class="hint">${because}</p>` : ''}
            </li>`)}
        </ul>`)}
    </section>`
}
