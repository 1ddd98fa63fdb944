// Lines that stand on every bill: strip-down, assembly, gaskets, oil, freight.
/** @import { Applies, PriceList, Standing, StandingPrice } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { plain, plainRate, read, readRate, shown } from '../amounts.js'
import { catalogue, choicesOf } from '../catalogue.js'
import { choice } from '../controls/choice.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { words } from '../words.js'

const text = words.prices

/** @param {PriceList} list @param {(prices: PriceList) => Promise<unknown>} keep */
export const standing = (list, keep) => html`
  <section aria-labelledby="standing">
    <h2 id="standing">${text.standing}</h2>
    <p class="hint">${text.standingHint}</p>
    <ul class="quote">${catalogue().standing.map(({ id, words }) => line(list, id, words, keep))}</ul>
  </section>`

/** @param {PriceList} list @param {Standing} of @param {string} what
 * @param {(prices: PriceList) => Promise<unknown>} keep */
function line(list, of, what, keep) {
  const { currency } = list
  const here = list.standing?.find((line) => line.of === of)
  const name = `standing-${of}`
  const form = formOf(name, () => asEntered(here, currency))
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, send((entered) => keep(withLine(list, readLine(of, entered, currency)))))
  }
  const verb = here ? words.costs.changePrice : words.costs.enterPrice
  return html`
    <li class="quote-line">
      <div class="quote-head">
        <h3>${what}</h3>
        <p class=${here ? 'amount' : 'amount no-price'}>${here ? inWords(here, currency) : text.standingNot}</p>
      </div>
      <details>
        <summary aria-label=${words.costs.priceOf(verb, what)}>${verb}</summary>
        <form class="entry" aria-label=${what} @submit=${save}>
          ${foundDraft(form)}
          <div class="pair">
            ${input({
              id: `${name}-amount`,
              label: text.amount(currency),
              value: entered.amount,
              kind: 'amount',
              enter: (amount) => enter({ amount }),
            })}
            ${input({
              id: `${name}-minutes`,
              label: words.money.minutes,
              value: entered.minutes,
              kind: 'number',
              enter: (minutes) => enter({ minutes }),
            })}
            ${input({
              id: `${name}-share`,
              label: text.share,
              value: entered.share,
              kind: 'amount',
              enter: (share) => enter({ share }),
            })}
          </div>
          ${choice({
            name: `${name}-applies`,
            legend: text.applies,
            options: choicesOf(catalogue().applies),
            value: entered.applies,
            choose: (applies) => enter({ applies }),
          })}
          <p role="alert" class="refusal">${refusal}</p>
          <button aria-label=${text.saveNamed(what)}>${words.money.savePrice}</button>
        </form>
      </details>
    </li>`
}

/** @typedef {{ amount: string, minutes: string, share: string, applies: Applies }} Entered */

/** @param {StandingPrice | undefined} line @param {string} currency @returns {Entered} */
const asEntered = (line, currency) => ({
  amount: line?.amount ? plain(line.amount, currency) : '',
  minutes: line?.minutes ? String(line.minutes) : '',
  share: line?.share ? plainRate(line.share) : '',
  applies: line?.applies ?? 'always',
})

/** Nothing entered takes the line off. @param {Standing} of @param {Entered} entered @param {string} currency
 * @returns {{ of: Standing, line: StandingPrice | null }} */
function readLine(of, { amount, minutes, share, applies }, currency) {
  if (!/^\d{0,6}$/.test(minutes.trim())) throw new Error(words.money.noMinutes(minutes.trim()))
  if (![amount, minutes, share].some((typed) => typed.trim())) return { of, line: null }
  const read_ = { amount: read(amount, currency), minutes: Number(minutes), share: readRate(share), applies }
  return { of, line: { of, ...read_ } }
}

/** @param {PriceList} list @param {{ of: Standing, line: StandingPrice | null }} entered @returns {PriceList} */
const withLine = (list, { of, line }) => ({
  ...list,
  standing: [...(list.standing ?? []).filter((other) => other.of !== of), ...(line ? [line] : [])],
})

/** @param {StandingPrice} line @param {string} currency */
const inWords = ({ amount, minutes, share }, currency) =>
  [
    amount ? shown(amount, currency) : '',
    minutes ? words.money.minutesInWords(minutes) : '',
    share ? text.shareInWords(plainRate(share)) : '',
  ].filter(Boolean).join(' + ')
