// What to do about one part, and why; a person may decide otherwise.
/** @import { Outcome, PartView, Reason } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { outcomeWords, workWords } from '../catalogue.js'
import { choice } from '../controls/choice.js'
import { append, submit } from '../edits/queue.js'
import { redraw } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.decisions

/** @param {string} job @param {PartView} part */
export function decision(job, part) {
  const { outcome, way, by_rules, overruled_because, reasons } = part.decision
  const isOverruled = overruled_because !== null
  return html`
    <details class="decision">
      <summary><span class="decision-lead">${text.heading}</span> ${capitalised(way ? workWords(way) : outcomeWords(outcome))}</summary>
      ${isOverruled ? html`
        <p>${text.personSays(outcomeWords(outcome))} ${text.because(overruled_because)}</p>
        <p>${text.rulesSay(outcomeWords(by_rules))}</p>
        <button type="button" @click=${() => append(job, { do: 'follow-rules', part: part.part })}>${text.followRules}</button>` : ''}
      ${reasons.length === 0 ? html`<p>${text.noReasons}</p>` : html`<ul class="reasons">${reasons.map(reason)}</ul>`}
      ${overrule(job, part)}
    </details>`
}

/** @param {Reason} reason */
export const reason = ({ outcome, because, source }) => html`
  <li><strong>${capitalised(outcomeWords(outcome))}.</strong> ${capitalised(because)} <span class="source">${text.source}: ${source}</span></li>`

/** @typedef {{ outcome: Outcome | undefined, reason: string, refusal: string }} Entry */

/** What has been entered and not saved, by job and part. @type {Map<string, Entry>} */
const entries = new Map()

/** @param {string} job @param {PartView} part */
function overrule(job, part) {
  const key = `${job} ${part.part}`
  const entry = entries.get(key) ?? { outcome: undefined, reason: '', refusal: '' }
  /** @param {Partial<Entry>} change */
  const enter = (change) => {
    entries.set(key, { ...entry, refusal: '', ...change })
    redraw()
  }
  /** @param {Event} event */
  const save = async (event) => {
    event.preventDefault()
    if (!entry.outcome) return
    try {
      await submit(job, { do: 'overrule', part: part.part, outcome: entry.outcome, reason: entry.reason })
      entries.delete(key)
      redraw()
    } catch (failure) {
      enter({ refusal: failure instanceof Error ? failure.message : words.errors.broke })
    }
  }
  return html`
    <form class="overrule" aria-label=${text.decideOtherwise} @submit=${save}>
      <h3>${text.decideOtherwise}</h3>
      ${choice({
        name: 'outcome',
        legend: text.instead,
        options: part.decision.possible.map((value) => ({ value, label: capitalised(outcomeWords(value)) })),
        value: entry.outcome,
        choose: (outcome) => enter({ outcome }),
      })}
      <label class="field">
        <span class="field-label">${text.reason}</span>
        <textarea rows="2" autocomplete="off" .value=${live(entry.reason)}
          @input=${(/** @type {InputEvent} */ event) => enter({ reason: /** @type {HTMLTextAreaElement} */ (event.target).value })}></textarea>
      </label>
      <p role="alert" class="refusal">${entry.refusal}</p>
      <button aria-disabled=${entry.outcome ? 'false' : 'true'}>${text.overrule}</button>
    </form>`
}
