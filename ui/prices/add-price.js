// A further price of the shop's list.
/** @import { PartKind, PriceList, Work } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue, kindOf } from '../catalogue.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { pick } from '../controls/input.js'
import {
  asEntered,
  keyWords,
  priceFields,
  priceOf,
  readPrice,
  suggestion,
  usualHands,
  withPrice,
} from '../controls/price.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.prices

/** @typedef {{ kind: PartKind | '', work: Work | '' }} Chosen */

/** @param {PriceList} list @param {(prices: PriceList) => Promise<unknown>} keep */
export function addPrice(list, keep) {
  const { currency } = list
  const start = () => ({ .../** @type {Chosen} */ ({ kind: '', work: '' }), ...asEntered(undefined, currency) })
  const form = formOf('new-price', start)
  const { entered, refusal, enter, send } = form
  const key = entered.kind && entered.work ? { kind: entered.kind, work: entered.work } : null
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return key && send((entered) => keep(withPrice(list, readPrice(key, entered, currency))))
  }
  const { kinds, works } = catalogue()
  const priced = kinds.filter((kind) => kind.works.length > 0)
  return html`
    <form class="entry" aria-labelledby="add-price" @submit=${save}>
      <h3 id="add-price">${text.add}</h3>
      ${foundDraft(form)}
      <div class="pair">
        ${pick({
          id: 'price-kind',
          label: text.kind,
          value: entered.kind,
          blank: text.choose,
          options: priced.map(({ id, name }) => ({ value: id, label: capitalised(name) })),
          choose: (kind) => enter({ kind, work: '' }),
        })}
        ${pick({
          id: 'price-work',
          label: text.work,
          value: entered.work,
          blank: text.choose,
          options: (entered.kind ? kindOf(entered.kind).works : works)
            .map(({ id, words }) => ({ value: id, label: capitalised(words) })),
          choose: (work) => enter({ work }),
        })}
      </div>
      ${key && priceOf(list, key) ? html`<p class="hint">${text.already(keyWords(key))}</p>` : ''}
      ${key ? suggestion(key, currency, enter) : ''}
      ${priceFields('new-price', currency, entered, enter)}
      ${key ? usualHands('new-price', key.work, entered, enter) : ''}
      <p role="alert" class="refusal">${refusal}</p>
      <button ?disabled=${!key}>${text.addNow}</button>
    </form>`
}
