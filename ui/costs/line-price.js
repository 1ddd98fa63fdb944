// The price of one line, entered in place: for this job, and for the shop if wished.
/** @import { JobView, Price, PriceKey } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { keepPrices } from '../backend.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { tick } from '../controls/input.js'
import { asEntered, keyId, priceFields, readPrice, suggestion, withPrice } from '../controls/price.js'
import { submit } from '../edits/queue.js'
import { state } from '../state.js'
import { words } from '../words.js'

const text = words.costs

/** @param {JobView} view @param {string} what @param {PriceKey} of @param {Price | undefined} price */
export function linePrice({ job, prices }, what, of, price) {
  const { currency } = prices
  const name = `price ${job} ${keyId(of)}`
  const form = formOf(name, () => ({ ...asEntered(price, currency), keep: false }))
  const { entered, refusal, enter, send } = form
  const shop = state.shelf.prices
  const isShopElsewhere = shop !== null && shop.currency !== currency
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, send(async (entered) => {
      const price = readPrice(of, entered, currency)
      await submit(job, { do: 'set-price', price })
      if (entered.keep && !isShopElsewhere) state.shelf =
        await keepPrices(withPrice(state.shelf.prices ?? { ...prices, prices: [] }, price))
    }))
  }
  const verb = price ? text.changePrice : text.enterPrice
  return html`
    <details>
      <summary aria-label=${text.priceOf(verb, what)}>${verb}</summary>
      <form class="entry" aria-label=${text.priceOf(verb, what)} @submit=${save}>
        ${foundDraft(form)}
        ${price ? '' : suggestion(of, currency, enter)}
        ${priceFields(name.replaceAll(' ', '-'), currency, entered, enter)}
        ${isShopElsewhere
          ? html`<p class="hint">${text.keepNot(shop.currency)}</p>`
          : tick({ label: text.keep, checked: entered.keep, enter: (keep) => enter({ keep }) })}
        <p role="alert" class="refusal">${refusal}</p>
        <button aria-label=${text.savePriceOf(what)}>${words.money.savePrice}</button>
      </form>
    </details>`
}
