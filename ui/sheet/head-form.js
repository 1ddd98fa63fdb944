// The head of the spec sheet: whose figures these are and how they are read.
/** @import { Dispute, JobView, SheetBasis } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue } from '../catalogue.js'
import { choice, optionsOf } from '../controls/choice.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { allKeysButton, input, tick } from '../controls/input.js'
import { submit } from '../edits/queue.js'
import { plainUnit } from '../instruments/usual.js'
import { withUnit } from '../lengths.js'
import { swap, toScreen } from '../route.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.sheet

/** @param {JobView} view */
export function headForm({ job, sheet }) {
  const form = formOf(`sheet-head ${job}`, () => asSaved(sheet.head))
  const { entered, refusal, enter, send } = form
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    if (await send((entered) => submit(job, { do: 'head-sheet', head: asHead(entered) }))) swap(toScreen(job, 'sheet'))
  }
  return {
    title: text.head,
    body: html`
      <form class="entry" id="sheet-head" @submit=${save}>
        ${foundDraft(form)}
        ${input({
          id: 'head-name',
          label: text.name,
          value: entered.name,
          hint: text.nameHint,
          enter: (name) => enter({ name }),
        })}
        ${input({
          id: 'head-source',
          label: text.source,
          value: entered.source,
          hint: text.sourceHint,
          enter: (source) => enter({ source }),
        })}
        ${choice({
          name: 'sheet-unit',
          legend: text.unit,
          options: optionsOf(text.unitChoices),
          value: entered.unit,
          choose: (unit) => enter({ unit }),
        })}
        <p class="hint">${text.unitHint}</p>
        ${input({
          id: 'head-clean-up',
          label: text.cleanUp,
          value: entered.clean_up,
          kind: 'length',
          hint: text.cleanUpHint,
          enter: (clean_up) => enter({ clean_up }),
        })}
        ${tick({
          label: text.rules,
          hint: text.rulesHint,
          checked: entered.general_rules,
          enter: (general_rules) => enter({ general_rules }),
        })}
        ${input({
          id: 'head-guard',
          label: text.guardPercent,
          value: entered.guard,
          kind: 'number',
          hint: text.guardHint,
          enter: (guard) => enter({ guard }),
        })}
        ${disputes(entered, enter)}
        <p role="alert" class="refusal">${refusal}</p>
        ${allKeysButton()}
      </form>`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toScreen(job, 'sheet')}>${text.toSheet}</a>
        <button class="primary" form="sheet-head">${text.saveHead}</button>
      </div>`,
  }
}

/** Where published manuals disagree: which view the shop follows. The usual one stands first.
 * @param {ReturnType<typeof asSaved>} entered @param {(change: Partial<ReturnType<typeof asSaved>>) => void} enter */
function disputes({ otherwise }, enter) {
  const without = (/** @type {Dispute} */ id) => otherwise.filter((other) => other !== id)
  return html`
    <p>${text.disputes}</p>
    ${catalogue().disputes.map(({ id, question, usual, other }) => choice({
      name: `dispute-${id}`,
      legend: question,
      options: [{ value: 'usual', label: capitalised(usual) }, { value: 'other', label: capitalised(other) }],
      value: otherwise.includes(id) ? 'other' : 'usual',
      choose: (view) => enter({ otherwise: view === 'other' ? [...without(id), id] : without(id) }),
    }))}`
}

/** @param {SheetBasis} head */
const asSaved = ({ name, source, unit, clean_up = '', guard_percent = 100, general_rules = true, otherwise = [] }) =>
  ({ name, source, unit: plainUnit(unit), clean_up, guard: String(guard_percent), general_rules, otherwise })

/** @param {ReturnType<typeof asSaved>} entered @returns {SheetBasis} */
function asHead({ name, source, unit, clean_up, guard, general_rules, otherwise }) {
  return {
    name: name.trim(),
    source: source.trim(),
    unit,
    general_rules,
    // What is no whole number from 1 to 100 is sent as zero, which the core refuses with its reason.
    guard_percent: /^\d{1,3}$/.test(guard.trim()) ? Math.min(255, Number(guard)) : 0,
    ...(otherwise.length > 0 && { otherwise }),
    ...(clean_up.trim() && { clean_up: withUnit(clean_up, unit) }),
  }
}
