// How parts of a line are supplied, new, exchange or used, and where the old ones go.
/** @import { JobView, ListItem, OldPart, PartState } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { hasCurrency, plain, read } from '../amounts.js'
import { catalogue, choicesOf } from '../catalogue.js'
import { choice } from '../controls/choice.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { submit } from '../edits/queue.js'
import { words } from '../words.js'
import { itemKey } from './key.js'

const text = words.lists

/** @param {JobView} view @param {ListItem} item */
export function supplyForm(view, item) {
  const { supply, asked } = item
  if (!supply || asked.key.of !== 'order') return ''
  const { kind } = asked.key
  const { currency } = view.prices
  const form = formOf(`supply ${view.job} ${itemKey(item)}`, () => ({
    state: supply.state,
    deposit: supply.deposit ? plain(supply.deposit, currency) : '',
    old: supply.old,
  }))
  const { entered, refusal, enter, send } = form
  const isExchange = entered.state === 'exchange'
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(
      event,
      send(({ state, deposit, old }) => submit(view.job, {
        do: 'supply-parts',
        kind,
        supply: {
          state,
          deposit: state === 'exchange' ? read(deposit, currency) : 0,
          old: state === 'exchange' ? null : old,
        },
      })),
    )
  }
  return html`
    <details>
      <summary aria-label=${text.supplyOf(item.what)}>${text.supply}</summary>
      <form class="entry" aria-label=${text.supplyOf(item.what)} @submit=${save}>
        ${foundDraft(form)}
        ${choice({
          name: `supply-${kind}`,
          legend: text.supplied,
          options: choicesOf(catalogue().part_states),
          value: entered.state,
          choose: (/** @type {PartState} */ state) => enter({ state }),
        })}
        ${isExchange && hasCurrency(view.prices)
          ? input({
            id: `deposit-${kind}`,
            label: text.deposit(currency),
            value: entered.deposit,
            kind: 'amount',
            enter: (deposit) => enter({ deposit }),
          })
          : ''}
        ${isExchange ? '' : choice({
          name: `old-${kind}`,
          legend: text.oldParts,
          options: choicesOf(catalogue().old_parts).filter(({ value }) => value !== 'exchange'),
          value: entered.old ?? undefined,
          choose: (/** @type {OldPart} */ old) => enter({ old }),
        })}
        <p role="alert" class="refusal">${refusal}</p>
        <button aria-label=${text.saveNamed(text.supplyOf(item.what))}>${text.save}</button>
      </form>
    </details>`
}
