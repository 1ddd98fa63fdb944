// Currency, hour and tax: what all prices of a list have in common.
/** @import { PriceList, TaxRounding } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { codeOf, hasCurrency, plain, plainRate, read, readCurrency, readRate, shown } from '../amounts.js'
import { words } from '../words.js'
import { choice, optionsOf } from './choice.js'
import { foldAfter } from './fold.js'
import { formOf } from './form.js'
import { foundDraft } from './found-draft.js'
import { input, tick } from './input.js'

const text = words.money

/** @typedef {{ currency: string, hour: string, rate: string, rounding: TaxRounding, startEmpty: boolean }} Entered */

/** In a sentence. @param {PriceList} prices */
export const termsInWords = ({ currency, hour, tax }) =>
  text.terms(currency, shown(hour, currency), `${plainRate(tax.rate)} %`, text.roundingsInWords[tax.rounding])

/** The form over a list of prices. It hands the whole list to `save`, which rejects with a refusal.
 * @param {string} id unique on the screen and among all forms @param {PriceList} prices
 * @param {(prices: PriceList) => Promise<unknown>} save */
export function termsForm(id, prices, save) {
  const form = formOf(id, () => asEntered(prices))
  const { entered, refusal, enter } = form
  const send = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, form.send((entered) => save(withTerms(prices, entered))))
  }
  return html`
    <form class="entry" aria-label=${words.prices.terms} @submit=${send}>
      ${foundDraft(form)}
      <div class="pair">
        ${input({
          id: `${id}-currency`,
          label: text.currency,
          value: entered.currency,
          hint: text.currencyHint,
          kind: 'code',
          enter: (currency) => enter({ currency }),
        })}
        ${input({
          id: `${id}-hour`,
          label: text.hour(typedCode(entered)),
          value: entered.hour,
          kind: 'amount',
          enter: (hour) => enter({ hour }),
        })}
        ${input({
          id: `${id}-rate`,
          label: text.rate,
          value: entered.rate,
          hint: text.rateHint,
          kind: 'amount',
          enter: (rate) => enter({ rate }),
        })}
      </div>
      ${choice({
        name: `${id}-rounding`,
        legend: text.rounding,
        options: optionsOf(text.roundings),
        value: entered.rounding,
        choose: (rounding) => enter({ rounding }),
      })}
      ${isOther(prices, entered)
        ? tick({
          label: text.startEmpty(prices.currency),
          checked: entered.startEmpty,
          enter: (startEmpty) => enter({ startEmpty }),
        })
        : ''}
      <p role="alert" class="refusal">${refusal}</p>
      <button class=${hasCurrency(prices) ? '' : 'primary'}>${text.saveTerms}</button>
    </form>`
}

/** @param {Entered} entered */
const typedCode = ({ currency }) => currency.trim().toUpperCase()

/** Whether prices stand in another currency than the one that is typed.
 * @param {PriceList} prices @param {Entered} entered */
const isOther = (prices, entered) =>
  hasCurrency(prices)
    && prices.prices.length > 0
    && typedCode(entered).length === 3
    && typedCode(entered) !== prices.currency

/** @param {PriceList} prices @returns {Entered} */
const asEntered = ({ currency, hour, tax }) => ({
  currency: codeOf(currency),
  hour: hour ? plain(hour, currency) : '',
  rate: plainRate(tax.rate),
  rounding: tax.rounding,
  startEmpty: false,
})

/** @param {PriceList} prices @param {Entered} entered @returns {PriceList} */
function withTerms(prices, entered) {
  const currency = readCurrency(entered.currency)
  const isElsewhere = isOther(prices, entered)
  if (isElsewhere && !entered.startEmpty) throw new Error(text.notConverted(prices.currency))
  return {
    currency,
    hour: read(entered.hour, currency),
    tax: { rate: readRate(entered.rate), rounding: entered.rounding },
    prices: isElsewhere ? [] : prices.prices,
    standing: isElsewhere ? [] : prices.standing ?? [],
    ...(isElsewhere || !prices.estimate_rules ? {} : { estimate_rules: prices.estimate_rules }),
  }
}
