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
export function jobPrices({ job, prices }) {
  const shop = state.shelf.prices
  const isPriced = hasCurrency(prices)
  const take = () => shop && append(job, { do: 'use-prices', prices: takenOver(shop, prices) })
  return html`
    <section aria-labelledby="job-prices">
      <h2 id="job-prices">${text.prices}</h2>
      ${isPriced ? html`<p>${termsInWords(prices)}</p>` : html`<p>${text.none}</p>`}
      ${isPriced && shop ? newer(shop, prices, take) : ''}
      ${isPriced ? '' : shop
        ? html`<button type="button" class="primary" @click=${take}>${text.take}</button>`
        : html`<a class="button primary" href=${toShop('prices')}>${text.enterShop}</a>`}
      <details>
        <summary>${isPriced ? text.change : text.enterHere}</summary>
        ${termsForm(`terms ${job}`, prices, (changed) => submit(job, { do: 'use-prices', prices: changed }))}
      </details>
    </section>`
}

/** An offer to take over what the shop's list has become.
 * @param {PriceList} shop @param {PriceList} prices @param {() => unknown} take */
function newer(shop, prices, take) {
  const changed = shop.prices.filter((price) => !isSame(priceOf(prices, price.of), price)).length
  const hasOtherTerms = !isSame({ ...shop, prices: [] }, { ...prices, prices: [] })
  if (changed === 0 && !hasOtherTerms) return ''
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
