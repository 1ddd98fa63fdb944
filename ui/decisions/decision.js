// What to do about one part, and why; a person may decide otherwise.
/** @import { Outcome, PartView, Reason } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue, outcomeWords, workWords } from '../catalogue.js'
import { cautionLines } from '../controls/cautions.js'
import { choice } from '../controls/choice.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { passage } from '../controls/input.js'
import { append, submit } from '../edits/queue.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.decisions

/** @param {string} job @param {PartView} part */
export function decision(job, part) {
  const { outcome, way, by_rules, overruled_because, reasons } = part.decision
  const isOverruled = overruled_because !== null
  return html`
    <details class="decision">
      <summary><span class="fold-said"><span class="decision-lead">${text.heading}</span> ${capitalised(way
        ? workWords({ kind: part.kind, work: way })
        : outcomeWords(outcome))}</span></summary>
      ${isOverruled ? html`
        <p>${text.personSays(outcomeWords(outcome))} ${text.because(overruled_because)}</p>
        <p>${text.rulesSay(outcomeWords(by_rules))}</p>
        <button type="button"
          @click=${() => append(job, { do: 'follow-rules', part: part.part })}>${text.followRules}</button>` : ''}
      ${reasons.length === 0 ? html`<p>${text.noReasons}</p>` : html`<ul class="reasons">${reasons.map(reason)}</ul>`}
      ${cautionLines(part.work_cautions)}
      <p class="hint">${catalogue().governs}</p>
      ${overrule(job, part)}
    </details>`
}

/** @param {Reason} reason */
export const reason = ({ outcome, because, source }) => html`
  <li>
    <strong>${capitalised(outcomeWords(outcome))}.</strong> ${capitalised(because)}
    <span class="source">${text.source}: ${source}</span>
  </li>`

/** @param {string} job @param {PartView} part */
function overrule(job, part) {
  const start = () => ({ outcome: /** @type {Outcome | undefined} */ (undefined), reason: '' })
  const form = formOf(`overrule ${job} ${part.part}`, start)
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    const { outcome } = entered
    return outcome && send(({ reason }) => submit(job, { do: 'overrule', part: part.part, outcome, reason }))
  }
  return html`
    <form class="entry overrule" aria-label=${text.decideOtherwise} @submit=${save}>
      <h3>${text.decideOtherwise}</h3>
      ${foundDraft(form)}
      ${choice({
        name: 'outcome',
        legend: text.instead,
        options: part.decision.possible.map((value) => ({ value, label: capitalised(outcomeWords(value)) })),
        value: entered.outcome,
        choose: (outcome) => enter({ outcome }),
      })}
      ${passage({ label: text.reason, value: entered.reason, enter: (reason) => enter({ reason }) })}
      <p role="alert" class="refusal">${refusal}</p>
      <button aria-disabled=${entered.outcome ? 'false' : 'true'}>${text.overrule}</button>
    </form>`
}
