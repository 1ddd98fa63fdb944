// What the law of the shop's place asks of an estimate: nothing, unless it is entered.
/** @import { Allowance, EstimateRules, PriceList } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { plain, plainRate, read, readRate } from '../amounts.js'
import { choice, optionsOf } from '../controls/choice.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input, tick } from '../controls/input.js'
import { words } from '../words.js'

const text = words.prices

/** @typedef {'never' | 'any' | 'beyond'} Asks when the customer must be asked about an excess */
/** @typedef {{ asks: Asks, least: string, share: string, most: string, oldParts: boolean, days: string }} Entered */

/** @param {PriceList} list @param {(prices: PriceList) => Promise<unknown>} keep */
export function estimateRules(list, keep) {
  const { currency } = list
  const form = formOf('estimate-rules', () => asEntered(list))
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, send((entered) => keep(withRules(list, entered))))
  }
  return html`
    <section aria-labelledby="estimate-rules">
      <h2 id="estimate-rules">${text.estimateRules}</h2>
      <p class="hint">${text.estimateRulesHint}</p>
      <form class="entry" aria-labelledby="estimate-rules" @submit=${save}>
        ${foundDraft(form)}
        ${choice({
          name: 'estimate-asks',
          legend: text.asks,
          options: optionsOf(text.asksWhen),
          value: entered.asks,
          choose: (asks) => enter({ asks }),
        })}
        ${entered.asks === 'beyond' ? allowance(entered, currency, enter) : ''}
        ${input({
          id: 'valid-days',
          label: text.validDays,
          value: entered.days,
          kind: 'amount',
          enter: (days) => enter({ days }),
        })}
        ${tick({ label: text.oldParts, checked: entered.oldParts, enter: (oldParts) => enter({ oldParts }) })}
        <p role="alert" class="refusal">${refusal}</p>
        <button>${text.saveEstimateRules}</button>
      </form>
    </section>`
}

/** The greater of an amount and a share, up to a bound.
 * @param {Entered} entered @param {string} currency @param {(change: Partial<Entered>) => void} enter */
const allowance = ({ least, share, most }, currency, enter) => html`
  <div class="pair">
    ${input({
      id: 'allowance-least',
      label: text.allowanceLeast(currency),
      value: least,
      kind: 'amount',
      enter: (least) => enter({ least }),
    })}
    ${input({
      id: 'allowance-share',
      label: text.allowanceShare,
      value: share,
      kind: 'amount',
      enter: (share) => enter({ share }),
    })}
    ${input({
      id: 'allowance-most',
      label: text.allowanceMost(currency),
      value: most,
      kind: 'amount',
      enter: (most) => enter({ most }),
    })}
  </div>
  <p class="hint">${text.allowanceHint}</p>`

/** @param {PriceList} list @returns {Entered} */
function asEntered({ currency, estimate_rules: rules, valid_days: days }) {
  const allowance = rules?.allowance
  return {
    asks: asksOf(allowance),
    least: allowance?.least ? plain(allowance.least, currency) : '',
    share: allowance?.share ? plainRate(allowance.share) : '',
    most: allowance?.most === undefined ? '' : plain(allowance.most, currency),
    oldParts: rules?.old_parts ?? false,
    days: days ? String(days) : '',
  }
}

/** @param {PriceList} list @param {Entered} entered @returns {PriceList} */
function withRules({ valid_days: _, ...list }, entered) {
  const days = entered.days.trim()
  if (days && !/^\d{1,3}$/.test(days)) throw new Error(text.noDays)
  return { ...list, ...(days ? { valid_days: Number(days) } : {}), estimate_rules: readRules(entered, list.currency) }
}

/** @param {Allowance | undefined} allowance @returns {Asks} */
function asksOf(allowance) {
  if (!allowance) return 'never'
  return allowance.least || allowance.share ? 'beyond' : 'any'
}

/** @param {Entered} entered @param {string} currency @returns {EstimateRules} */
function readRules({ asks, least, share, most, oldParts }, currency) {
  if (asks === 'never') return { old_parts: oldParts }
  if (asks === 'any') return { allowance: { least: 0, share: 0 }, old_parts: oldParts }
  const allowance = { least: read(least, currency), share: readRate(share) }
  if (!allowance.least && !allowance.share) throw new Error(text.allowanceNothing)
  const bound = most.trim() ? { most: read(most, currency) } : {}
  return { allowance: { ...allowance, ...bound }, old_parts: oldParts }
}
