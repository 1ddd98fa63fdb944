// What a person knows or wants otherwise: that the group had been machined before, or another size than the plan's.
/** @import { GroupPlan, JobView, SizeGroup } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { choice } from '../controls/choice.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { passage } from '../controls/input.js'
import { append, submit } from '../edits/queue.js'
import { rowsOf } from '../sheet/series-rows.js'
import { words } from '../words.js'

const text = words.sizing

/** @param {JobView} view @param {GroupPlan} plan */
export function otherSize(view, plan) {
  const { group } = plan
  return html`
    <details class="other-size">
      <summary>
        <span class="fold-said">${text.before[group]} <span class="lead">${plan.found_shown}</span></span>
      </summary>
      ${choice({
        name: `found-${group}`,
        legend: text.foundLegend[group],
        options: sizesOf(view, group, view.found_sizes[group], text.standard),
        value: view.found_sizes[group] ?? '',
        choose: (size) => append(view.job, { do: 'found-size', group, size: size || null }),
      })}
      <p class="hint">${text.foundHint}</p>
    </details>
    <details class="other-size" ?open=${plan.chosen_because !== null}>
      <summary>${text.another}</summary>
      ${chosen(view, plan)}
    </details>`
}

/** @param {JobView} view @param {GroupPlan} plan */
function chosen(view, { group, chosen_because }) {
  const saved = view.chosen_sizes[group]
  const form = formOf(`size ${view.job} ${group}`, () => ({ size: saved ?? '', reason: chosen_because ?? '' }))
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return send(({ size, reason }) => submit(
      view.job,
      { do: 'choose-size', group, size: size || null, reason: size ? reason : '' },
    ))
  }
  return html`
    <form class="entry" @submit=${save}>
      ${foundDraft(form)}
      ${choice({
        name: `choose-${group}`,
        legend: text.chooseLegend,
        options: sizesOf(view, group, saved, text.ownPlan),
        value: entered.size,
        choose: (size) => enter({ size }),
      })}
      ${entered.size === ''
        ? ''
        : passage({ label: text.reason, value: entered.reason, enter: (reason) => enter({ reason }) })}
      <p role="alert" class="refusal">${refusal}</p>
      <button>${text.saveSize}</button>
    </form>`
}

/** The sizes of the series, after what stands for none of them.
 * @param {JobView} view @param {SizeGroup} group @param {string | undefined} current @param {string} none */
function sizesOf({ sheet }, group, current, none) {
  const sizes = rowsOf(sheet, group).filter(({ withoutGrinding }) => !withoutGrinding).map(({ size }) => size)
  const all = current && !sizes.includes(current) ? [...sizes, current] : sizes
  return [{ value: '', label: none }, ...all.map((size) => ({ value: size, label: size }))]
}
