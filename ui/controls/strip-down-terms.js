// What a shop asks for opening an engine, as it is entered: usually, or for one job.
/** @import { StripDownTerms } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { plain, read } from '../amounts.js'
import { words } from '../words.js'
import { input, passage } from './input.js'

const text = words.stripDown

/** @typedef {{ opening: string, together: string, boxes: string, destroyed: string, days: string }} Terms as typed */

/** @param {string} id @param {string} currency @param {Terms} entered
 * @param {(change: Partial<Terms>) => void} enter */
export const stripDownFields = (id, currency, entered, enter) => html`
  <p class="hint">${text.termsHint(currency)}</p>
  <div class="pair">
    ${input({
      id: `${id}-opening`,
      label: text.opening,
      value: entered.opening,
      kind: 'amount',
      enter: (opening) => enter({ opening }),
    })}
    ${input({
      id: `${id}-together`,
      label: text.together,
      value: entered.together,
      kind: 'amount',
      enter: (together) => enter({ together }),
    })}
    ${input({
      id: `${id}-boxes`,
      label: text.boxes,
      value: entered.boxes,
      kind: 'amount',
      enter: (boxes) => enter({ boxes }),
    })}
    ${input({
      id: `${id}-days`,
      label: text.days,
      value: entered.days,
      kind: 'number',
      enter: (days) => enter({ days }),
    })}
  </div>
  ${passage({ label: text.destroyed, value: entered.destroyed, enter: (destroyed) => enter({ destroyed }) })}`

/** @param {StripDownTerms | undefined} terms @param {string} currency @returns {Terms} */
export function stripDownAsTyped(terms, currency) {
  const typed = (/** @type {number | undefined} */ minor) => (minor === undefined ? '' : plain(minor, currency))
  return {
    opening: typed(terms?.strip_down),
    together: typed(terms?.put_together),
    boxes: typed(terms?.in_boxes),
    destroyed: terms?.destroyed ?? '',
    days: terms?.most_days ? String(terms.most_days) : '',
  }
}

/** Nothing typed is no price yet; zero is free. @param {Terms} typed @param {string} currency
 * @returns {StripDownTerms} */
export function readStripDown({ opening, together, boxes, destroyed, days }, currency) {
  /** @param {'strip_down' | 'put_together' | 'in_boxes'} name @param {string} amount */
  const priced = (name, amount) => (amount.trim() ? { [name]: read(amount, currency) } : {})
  if (!/^\d{0,3}$/.test(days.trim())) throw new Error(text.noDays)
  return {
    ...priced('strip_down', opening),
    ...priced('put_together', together),
    ...priced('in_boxes', boxes),
    destroyed: destroyed.trim(),
    ...(days.trim() ? { most_days: Number(days) } : {}),
  }
}
