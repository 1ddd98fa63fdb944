// The machinist's word that the bores clean up at the size: with it the pistons are free to order.
/** @import { GroupPlan, JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { append, submit } from '../edits/queue.js'
import { shown } from '../lengths.js'
import { words } from '../words.js'

const text = words.sizing

/** Whether there is anything to confirm. @param {GroupPlan} plan */
export const asksWord = ({ group, action, size }) => group === 'bores' && action === 'machine' && size !== null

/** @param {JobView} view @param {GroupPlan} plan */
export const isConfirmed = ({ confirmed_sizes }, { group, size }) =>
  size !== null && confirmed_sizes[group]?.size === size

/** @param {JobView} view @param {GroupPlan} plan */
export function confirm(view, plan) {
  const { group, size, size_shown } = plan
  if (!asksWord(plan) || size === null) return ''
  const wanted = shown(size, view.sheet.head.unit)
  const confirmed = view.confirmed_sizes[group]
  if (confirmed && isConfirmed(view, plan)) {
    return html`
      <p>${text.isConfirmed(size_shown, confirmed.by)}
        <button type="button" class="quiet"
          @click=${() => append(view.job, { do: 'confirm-size', group, size: null, by: '' })}>${text.unconfirm}</button>
      </p>`
  }
  const form = formOf(`confirm ${view.job} ${group}`, () => ({ by: '' }))
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return send(({ by }) => submit(view.job, { do: 'confirm-size', group, size: wanted, by: by.trim() }))
  }
  return html`
    <form class="entry" aria-label=${text.confirm(size_shown)} @submit=${save}>
      <p class="hint">${text.confirmHint}</p>
      ${foundDraft(form)}
      ${input({
        id: `confirm-${group}`,
        label: text.confirmedBy,
        value: entered.by,
        kind: 'name',
        enterKey: 'done',
        enter: (by) => enter({ by }),
      })}
      <p role="alert" class="refusal">${refusal}</p>
      <button>${text.confirm(size_shown)}</button>
    </form>`
}
