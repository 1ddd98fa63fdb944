// The prices of this job: taken over from the shop's list, and kept as they were when that changes.
/** @import { JobView, PriceList } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { hasCurrency } from '../amounts.js'
import { priceOf } from '../controls/price.js'
import { termsForm, termsInWords } from '../controls/terms.js'
import { append, submit } from '../edits/queue.js'
import { toShop } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'

const text = words.costs

/** @param {JobView} view */
export function jobPrices(view) {
  const { job, prices } = view
  const shop = state.shelf.prices
  const isPriced = hasCurrency(prices)
  return html`
    ${isPriced ? html`<p>${termsInWords(prices)}</p>` : html`<p>${text.none}</p>${takePrices(view)}`}
    ${isPriced && shop ? newer(shop, prices, () => take(view, shop)) : ''}
    <details>
      <summary>${isPriced ? text.change : text.enterHere}</summary>
      ${termsForm(`terms ${job}`, prices, (changed) => submit(job, { do: 'use-prices', prices: changed }))}
    </details>`
}

/** How a job without prices comes to them. @param {JobView} view */
export function takePrices(view) {
  const shop = state.shelf.prices
  return shop
    ? html`<button type="button" class="primary" @click=${() => take(view, shop)}>${text.take}</button>`
    : html`<a class="button primary" href=${toShop('prices')}>${text.enterShop}</a>`
}

/** @param {JobView} view @param {PriceList} shop */
const take = ({ job, prices }, shop) => append(job, { do: 'use-prices', prices: takenOver(shop, prices) })

/** Whether the shop's list is not what this job took over. @param {PriceList} prices */
export function hasNewer(prices) {
  const shop = state.shelf.prices
  return hasCurrency(prices) && shop !== null && (changedIn(shop, prices) > 0 || hasOtherTerms(shop, prices))
}

/** @param {PriceList} shop @param {PriceList} prices */
const changedIn = (shop, prices) => shop.prices.filter((price) => !isSame(priceOf(prices, price.of), price)).length

/** @param {PriceList} shop @param {PriceList} prices */
const hasOtherTerms = (shop, prices) => !isSame({ ...shop, prices: [] }, { ...prices, prices: [] })

/** An offer to take over what the shop's list has become.
 * @param {PriceList} shop @param {PriceList} prices @param {() => unknown} take */
function newer(shop, prices, take) {
  const changed = changedIn(shop, prices)
  if (changed === 0 && !hasOtherTerms(shop, prices)) return ''
  return html`
    <div class="offer">
      <p>${text.newer(changed)} ${shop.currency === prices.currency ? text.keepsOwn : text.losesOwn(shop.currency)}</p>
      <button type="button" @click=${take}>${text.takeNewer}</button>
    </div>`
}

/** The shop's list, with the prices that only the job has if they are in the same currency.
 * @param {PriceList} shop @param {PriceList} job @returns {PriceList} */
function takenOver(shop, job) {
  const own = shop.currency === job.currency ? job.prices.filter(({ of }) => !priceOf(shop, of)) : []
  return { ...shop, prices: [...shop.prices, ...own] }
}

/** Whether both say the same, whatever the order in which they say it. @param {unknown} one @param {unknown} other */
const isSame = (one, other) => JSON.stringify(one, sorted) === JSON.stringify(other, sorted)

/** @param {string} _ @param {unknown} value */
const sorted = (_, value) =>
  value && typeof value === 'object' && !Array.isArray(value) ? Object.fromEntries(Object.entries(value).sort()) : value
