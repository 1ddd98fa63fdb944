// What one of an item of the shop's own costs, entered in place.
/** @import { JobView, QuoteLine } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { plain, read } from '../amounts.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { submit } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.costs

/** @param {JobView} view @param {QuoteLine} line @param {string} own */
export function ownPrice({ job, prices: { currency } }, { what, each }, own) {
  const name = `own-price ${job} ${own}`
  const form = formOf(name, () => ({ each: each === null ? '' : plain(each, currency) }))
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, send(({ each }) =>
      submit(job, { do: 'price-item', item: own, price: each.trim() ? read(each, currency) : null })))
  }
  const verb = each === null ? text.enterPrice : text.changePrice
  return html`
    <details>
      <summary aria-label=${text.priceOf(verb, what)}>${verb}</summary>
      <form class="entry" aria-label=${text.priceOf(verb, what)} @submit=${save}>
        ${foundDraft(form)}
        ${input({
          id: name.replaceAll(' ', '-'),
          label: text.ownEach(currency),
          value: entered.each,
          kind: 'amount',
          enter: (each) => enter({ each }),
        })}
        <p role="alert" class="refusal">${refusal}</p>
        <button aria-label=${text.savePriceOf(what)}>${words.money.savePrice}</button>
      </form>
    </details>`
}
