// The shop's prices: currency, hour and tax, then the list by part and work.
/** @import { Price, PriceList } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { hasCurrency } from '../amounts.js'
import { keepPrices } from '../backend.js'
import { catalogue } from '../catalogue.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import {
  asEntered,
  keyId,
  keyWords,
  priceFields,
  priceInWords,
  readPrice,
  usualHands,
  withoutPrice,
  withPrice,
} from '../controls/price.js'
import { termsForm, termsInWords } from '../controls/terms.js'
import { attempt, state } from '../state.js'
import { words } from '../words.js'
import { addPrice } from './add-price.js'
import { estimateRules } from './estimate-rules.js'
import { standing } from './standing.js'
import { stripDown } from './strip-down.js'

const text = words.prices

/** @type {PriceList} */
const NOTHING = { currency: 'XXX', hour: 0, tax: { rate: 0, rounding: 'total' }, prices: [] }

export function prices() {
  const list = state.shelf.prices ?? NOTHING
  const isBegun = hasCurrency(list)
  const terms = termsForm('shop-terms', list, keep)
  return {
    title: words.screens.prices,
    body: html`
      <p>${text.intro}</p>
      <section aria-labelledby="shop-terms">
        <h2 id="shop-terms">${text.terms}</h2>
        ${isBegun
          ? html`<p>${termsInWords(list)}</p><details><summary>${words.costs.change}</summary>${terms}</details>`
          : terms}
      </section>
      <section aria-labelledby="shop-prices">
        <h2 id="shop-prices">${text.list}</h2>
        ${list.prices.length === 0 ? html`<p>${text.none}</p>` : html`
          <ul class="quote">${repeat(sorted(list.prices), ({ of }) => keyId(of), (price) => line(list, price))}</ul>`}
        ${isBegun ? addPrice(list, keep) : html`<p class="hint">${text.currencyFirst}</p>`}
      </section>
      ${isBegun ? [standing(list, keep), stripDown(list, keep), estimateRules(list, keep)] : ''}`,
    bar: state.cameFrom
      ? html`<div class="bar"><a class="button" href=${state.cameFrom}>${words.frame.backToJob}</a></div>`
      : '',
  }
}

/** @param {PriceList} prices */
async function keep(prices) {
  state.shelf = await keepPrices(prices)
  state.notice = words.frame.saved
}

/** In the order of the parts, then of the works. @param {Price[]} all */
function sorted(all) {
  const { kinds, works } = catalogue()
  const place = (/** @type {Price} */ { of }) =>
    kinds.findIndex(({ id }) => id === of.kind) * works.length + works.findIndex(({ id }) => id === of.work)
  return [...all].sort((one, other) => place(one) - place(other))
}

/** @param {PriceList} list @param {Price} price */
function line(list, price) {
  const { currency } = list
  const key = keyWords(price.of)
  const id = `shop-price-${keyId(price.of).replace(' ', '-')}`
  const form = formOf(id, () => asEntered(price, currency))
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, send((entered) => keep(withPrice(list, readPrice(price.of, entered, currency)))))
  }
  const drop = async () => {
    if (await attempt(() => keep(withoutPrice(list, price.of)))) form.forget()
  }
  return html`
    <li class="quote-line">
      <div class="quote-head"><h3>${key}</h3><p class="amount">${priceInWords(price, currency)}</p></div>
      <details>
        <summary aria-label=${words.costs.priceOf(words.costs.changePrice, key)}>${words.costs.changePrice}</summary>
        <form class="entry" aria-label=${key} @submit=${save}>
          ${foundDraft(form)}
          ${priceFields(id, currency, entered, enter)}
          ${usualHands(id, price.of.work, entered, enter)}
          <p role="alert" class="refusal">${refusal}</p>
          <button aria-label=${text.saveNamed(key)}>${words.money.savePrice}</button>
          <button type="button" class="quiet" aria-label=${text.dropNamed(key)}
            @click=${drop}>${text.drop}</button>
        </form>
      </details>
    </li>`
}
