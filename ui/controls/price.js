// One price: its name, its three parts in words and as fields, and what was charged for it before.
/** @import { Charge, Hands, LearntPrice, Price, PriceKey, PriceList, Work } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { plain, read, shown } from '../amounts.js'
import { getLearntPrices } from '../backend.js'
import { kindOf, workWords } from '../catalogue.js'
import { day, dayOf } from '../dates.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { input, pick } from './input.js'

const text = words.money

/** @typedef {{ part: string, machining: string, minutes: string, hands: Hands | '' }} Entered */

/** What a line is for as text, to compare it. @param {Charge} of */
export const keyId = (of) => ('own' in of ? `own ${of.own}` : 'standing' in of ? of.standing : `${of.kind} ${of.work}`)
/** "Piston: replace". @param {PriceKey} key */
export const keyWords = ({ kind, work }) =>
  `${capitalised(kindOf(kind).name)}: ${workWords({ kind, work })}`
/** @param {PriceList | null} prices @param {PriceKey} key */
export const priceOf = (prices, key) => prices?.prices.find(({ of }) => keyId(of) === keyId(key))

/** In place of the one for the same, or as a further one.
 * @param {PriceList} prices @param {Price} price @returns {PriceList} */
export const withPrice = (prices, price) =>
  ({ ...prices, prices: [...withoutPrice(prices, price.of).prices, price] })
/** @param {PriceList} prices @param {PriceKey} key @returns {PriceList} */
export const withoutPrice = (prices, key) =>
  ({ ...prices, prices: prices.prices.filter(({ of }) => keyId(of) !== keyId(key)) })

/** "part 21.80 EUR, 12 min". @param {Price} price @param {string} currency */
export const priceInWords = ({ part, machining, minutes, hands }, currency) =>
  [
    part ? text.partInWords(shown(part, currency)) : '',
    machining ? text.machiningInWords(shown(machining, currency)) : '',
    minutes ? text.minutesInWords(minutes) : '',
    hands ? text.hands[hands].toLowerCase() : '',
  ].filter(Boolean).join(', ') || shown(0, currency)

/** @param {Price | undefined} price @param {string} currency @returns {Entered} */
export const asEntered = (price, currency) => ({
  part: price?.part ? plain(price.part, currency) : '',
  machining: price?.machining ? plain(price.machining, currency) : '',
  minutes: price?.minutes ? String(price.minutes) : '',
  hands: price?.hands ?? '',
})

/** The three fields.
 * @param {string} id @param {string} currency @param {Entered} entered
 * @param {(change: Partial<Entered>) => void} enter */
export const priceFields = (id, currency, entered, enter) => html`
  <div class="pair">
    ${input({
      id: `${id}-part`,
      label: text.part(currency),
      value: entered.part,
      kind: 'amount',
      enter: (part) => enter({ part }),
    })}
    ${input({
      id: `${id}-machining`,
      label: text.machining(currency),
      value: entered.machining,
      kind: 'amount',
      enter: (machining) => enter({ machining }),
    })}
    ${input({
      id: `${id}-minutes`,
      label: text.minutes,
      value: entered.minutes,
      kind: 'number',
      enter: (minutes) => enter({ minutes }),
    })}
  </div>
  <p class="hint">${text.eachHint}</p>`

/** Who does such work in this shop, where it does otherwise than the trade. A new part is ordered, whoever fits it.
 * @param {string} id @param {Work} work @param {Entered} entered @param {(change: Partial<Entered>) => void} enter */
export const usualHands = (id, work, entered, enter) => work === 'replace' ? '' : pick({
  id: `${id}-hands`,
  label: text.usualHands,
  value: entered.hands,
  blank: text.asTheTrade,
  options: [{ value: 'here', label: text.hands.here }, { value: 'machine-shop', label: text.hands['machine-shop'] }],
  choose: (hands) => enter({ hands }),
})

/** What was typed; throws a sentence when it can't be.
 * @param {PriceKey} of @param {Entered} entered @param {string} currency @returns {Price} */
export function readPrice(of, { part, machining, minutes, hands }, currency) {
  if (![part, machining, minutes].some((typed) => typed.trim())) throw new Error(text.nothingEntered)
  if (!/^\d{0,6}$/.test(minutes.trim())) throw new Error(text.noMinutes(minutes.trim()))
  return {
    of,
    part: read(part, currency),
    machining: read(machining, currency),
    minutes: Number(minutes),
    ...(hands && { hands }),
  }
}

/** @type {LearntPrice[]} */
let learntPrices = []

/** Reads what the shop charged in its earlier jobs. */
export async function readLearnt() {
  learntPrices = await getLearntPrices()
}

/** What was charged for it in earlier jobs: shown, and filled in only when asked.
 * @param {PriceKey} key @param {string} currency @param {(entered: Entered) => void} use */
export function suggestion(key, currency, use) {
  const learnt = learntPrices.find(({ price }) => keyId(price.of) === keyId(key))
  if (!learnt) return ''
  return html`
    <p class="learnt">${inWords(learnt)}
      ${learnt.currency === currency
        ? html`<button type="button" @click=${() => use(asEntered(learnt.price, currency))}>${text.useLearnt}</button>`
        : ''}
    </p>`
}

/** @param {LearntPrice} learnt */
const inWords = ({ price, currency, at, from, jobs }) => text.learnt(
  priceInWords(price, currency),
  day(dayOf(at)),
  from,
  jobs,
)
