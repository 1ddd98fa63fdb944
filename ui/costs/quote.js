// The quote line by line: what, why, how many, each, together. A missing price is entered where it is missing.
/** @import { Asked } from '../approval/asked.js' */
/** @import { JobView, Quote, QuoteLine } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { hasCurrency, shown } from '../amounts.js'
import { priceOfAsked } from '../approval/asked.js'
import { folded } from '../controls/folded.js'
import { keyId, priceInWords, priceOf } from '../controls/price.js'
import { found } from '../lists/why.js'
import { words } from '../words.js'
import { linePrice } from './line-price.js'
import { ownPrice } from './own-price.js'

const text = words.costs

/** One job of the proposal to come: what is agreed to together stands together. @param {JobView} view
 * @param {Asked} asked */
export const jobLines = (view, asked) => html`
  <p class="list-progress">${priceOfAsked(asked, view.prices.currency)}</p>
  <ul class="quote">${repeat(asked.lines, ({ of }) => keyId(of), (entry) => line(view, entry))}</ul>`

/** Time is rounded once on the line, so that one piece times their number may miss it: then it is left out.
 * @param {JobView} view @param {QuoteLine} line */
function line(view, line) {
  const { currency } = view.prices
  const work = 'kind' in line.of ? line.of : null
  const price = work ? priceOf(view.prices, work) : undefined
  return html`
    <li class="quote-line">
      <div class="quote-head">
        <h2>${line.what}</h2>
        ${line.net === null || line.each === null
          ? html`<p class="amount no-price">${text.noPrice}</p>`
          : html`<p class="amount">${line.quantity > 1 && line.each * line.quantity === line.net
            ? html`<span class="amount-each">${text.each(line.quantity, shown(line.each, currency))}</span>`
            : ''} <strong>${shown(line.net, currency)}</strong></p>`}
      </div>
      <div class="line-more">
        ${hasCurrency(view.prices) && work ? linePrice(view, line.what, work, price) : ''}
        ${hasCurrency(view.prices) && 'own' in line.of ? ownPrice(view, line, line.of.own) : ''}
        ${folded({
          name: `${view.job} cost ${keyId(line.of)}`,
          summary: words.lists.whyShort,
          label: words.lists.whyOf(line.what),
          body: html`
            ${price ? html`<p class="hint">${priceInWords(price, currency)}</p>` : ''}
            <p>${line.because}</p>
            <div class="line-more">${found(view, line.parts)}</div>`,
        })}
      </div>
    </li>`
}

/** @param {Quote} quote */
export const totals = ({ net, tax, tax_rate, gross, currency, without_price }) => html`
  ${without_price > 0 ? html`<p class="notice">${text.without(without_price)}</p>` : ''}
  ${hasCurrency({ currency }) ? sums({ net, tax, tax_rate, gross, currency, without_price }) : ''}`

/** @param {Pick<Quote, 'net' | 'tax' | 'tax_rate' | 'gross' | 'currency' | 'without_price'>} quote */
const sums = ({ net, tax, tax_rate, gross, currency, without_price }) => html`
  <dl class="totals">
    <div><dt>${text.net}</dt><dd>${shown(net, currency)}</dd></div>
    <div><dt>${text.tax(tax_rate)}</dt><dd>${shown(tax, currency)}</dd></div>
    <div class="total">
      <dt>${without_price > 0 ? text.grossAtLeast : text.gross}</dt><dd>${shown(gross, currency)}</dd>
    </div>
  </dl>`
