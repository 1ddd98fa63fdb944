// What the shop usually asks for opening an engine: each new job takes it over.
/** @import { PriceList } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { readStripDown, stripDownAsTyped, stripDownFields } from '../controls/strip-down-terms.js'
import { words } from '../words.js'

const text = words.stripDown

/** @param {PriceList} list @param {(prices: PriceList) => Promise<unknown>} keep */
export function stripDown(list, keep) {
  const { currency } = list
  const start = () => stripDownAsTyped(list.strip_down, currency)
  const form = formOf('strip-down-terms', start)
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, send((entered) => keep({ ...list, strip_down: readStripDown(entered, currency) })))
  }
  return html`
    <section aria-labelledby="strip-down-terms">
      <h2 id="strip-down-terms">${text.usual}</h2>
      <form class="entry" aria-labelledby="strip-down-terms" @submit=${save}>
        ${foundDraft(form)}
        ${stripDownFields('usual', currency, entered, enter)}
        <p role="alert" class="refusal">${refusal}</p>
        <button>${text.saveUsual}</button>
      </form>
    </section>`
}
