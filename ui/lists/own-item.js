// An item of the shop's own, which no finding asks for: gaskets, fasteners.
/** @import { JobScope, ListKind } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue } from '../catalogue.js'
import { count } from '../controls/count.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input, pick } from '../controls/input.js'
import { submit } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.lists

/** @param {string} job @param {ListKind} list */
export function ownItem(job, list) {
  const form = formOf(
    `own ${job} ${list}`,
    () => ({ what: '', quantity: 1, because: '', scope: /** @type {JobScope | ''} */ ('') }),
  )
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, send(({ what, quantity, because, scope }) =>
      submit(job, {
        do: 'add-item',
        item: { list, what: what.trim(), quantity, because: because.trim(), ...(scope && { scope }) },
      })))
  }
  return html`
    <details class="own-item">
      <summary>${text.own}</summary>
      <form class="entry" aria-label=${text.own} @submit=${save}>
        <p class="hint">${text.ownHint}</p>
        ${foundDraft(form)}
        ${input({ id: 'own-what', label: text.what, value: entered.what, enter: (what) => enter({ what }) })}
        ${count({ label: text.quantity, value: entered.quantity, set: (quantity) => enter({ quantity }) })}
        ${input({
          id: 'own-because',
          label: text.because,
          value: entered.because,
          enter: (because) => enter({ because }),
        })}
        ${pick({
          id: 'own-scope',
          label: text.ownScope,
          value: entered.scope,
          blank: text.ownFurther,
          options: catalogue().job_scopes
            .filter(({ id }) => id !== 'further')
            .map(({ id, title }) => ({ value: id, label: title })),
          choose: (scope) => enter({ scope }),
        })}
        <p role="alert" class="refusal">${refusal}</p>
        <button>${text.add}</button>
      </form>
    </details>`
}
