// The layout of the engine, entered once. What can't be is refused by the backend; the reason is shown at the form and
// what was entered stays.
/** @import { Arrangement, JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue } from '../catalogue.js'
import { choice, optionsOf } from '../controls/choice.js'
import { count } from '../controls/count.js'
import { formOf } from '../controls/form.js'
import { submit } from '../edits/queue.js'
import { words } from '../words.js'
import { construction } from './construction.js'
import { derived, startOf } from './defaults.js'
import { valveGear } from './valve-gear.js'

const text = words.layout

/** @param {JobView} view */
export function layout(view) {
  const { entered, refusal, enter, send } = formOf(`arrangement ${view.job}`, () => startFrom(view))
  const { arrangement } = entered
  const set = setter(entered, enter)
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return send(({ arrangement }) => submit(view.job, { do: 'arrange', arrangement }))
  }
  return html`
    <section aria-labelledby="intake-layout">
      <h2 id="intake-layout">${words.intake.arrangement}</h2>
      ${view.assessment.engine ? html`<p>${text.entered(view.assessment.engine)}</p>` : ''}
      <form class="entry" @submit=${save}>
        ${choice({
          name: 'layout',
          legend: text.layout,
          options: catalogue().arrangements.map((start) => ({ value: start.arrangement.layout, label: start.name })),
          value: arrangement.layout,
          choose: (layout) => enter({ arrangement: startOf(catalogue(), layout), touched: [] }),
        })}
        <div class="counts">
          ${count({ label: text.cylinders, value: arrangement.cylinders, set: set('cylinders') })}
          ${count({ label: text.mains, value: arrangement.mains, set: set('mains') })}
          ${count({
            label: text.thrustMain,
            value: arrangement.thrust_main,
            hint: text.thrustHint,
            set: set('thrust_main'),
          })}
        </div>
        ${arrangement.layout === 'inline' ? '' : choice({
          name: 'rods',
          legend: text.rodsPerCrankpin,
          options: [{ value: '1', label: text.rods[1] }, { value: '2', label: text.rods[2] }],
          value: String(arrangement.rods_per_crankpin),
          choose: (value) => set('rods_per_crankpin')(Number(value)),
        })}
        ${valveGear(arrangement, set)}
        ${numbering(arrangement, set)}
        ${choice({
          name: 'oil-from',
          legend: text.oilFrom,
          options: [...optionsOf(text.oilEnds), { value: null, label: text.oilUnknown }],
          value: arrangement.oil_from ?? null,
          choose: (end) => set('oil_from')(end ?? undefined),
        })}
        ${construction(arrangement, set('construction'))}
        <p role="alert" class="refusal">${refusal}</p>
        <button class="primary wide">${view.arrangement ? text.change : text.save}</button>
      </form>
    </section>`
}

/** @param {Arrangement} arrangement @param {ReturnType<typeof setter>} set */
function numbering(arrangement, set) {
  const { numbering } = arrangement
  /** @param {Partial<Arrangement['numbering']>} part */
  const renumber = (part) => set('numbering')({ ...numbering, ...part })
  return html`
    ${choice({
      name: 'front',
      legend: text.front,
      options: optionsOf(text.fronts),
      value: arrangement.front,
      choose: set('front'),
    })}
    ${choice({
      name: 'from',
      legend: text.from,
      options: optionsOf(text.ends),
      value: numbering.from,
      choose: (from) => renumber({ from }),
    })}
    ${arrangement.layout === 'inline' ? '' : html`
      ${choice({
        name: 'banks',
        legend: text.banks,
        options: optionsOf(text.bankOrders),
        value: numbering.banks,
        choose: (banks) => renumber({ banks }),
      })}
      ${choice({
        name: 'first-bank',
        legend: text.firstBank,
        options: optionsOf(text.bankSides),
        value: numbering.first_bank,
        choose: (first_bank) => renumber({ first_bank }),
      })}
      <p class="hint">${text.banksHint}</p>`}`
}

/** @typedef {{ arrangement: Arrangement, touched: (keyof Arrangement)[] }} Entered with what the person has set */

/** @param {JobView} view @returns {Entered} */
const startFrom = ({ arrangement }) => ({ arrangement: arrangement ?? startOf(catalogue(), 'inline'), touched: [] })

/** Changes one value; what depends on it follows, unless the person has set it.
 * @param {Entered} entered @param {(change: Entered) => void} enter */
function setter({ arrangement, touched }, enter) {
  /** @template {keyof Arrangement} Name @param {Name} name @returns {(value: Arrangement[Name]) => void} */
  return (name) => (value) => {
    const now = [...touched, name]
    enter({ arrangement: derived({ ...arrangement, [name]: value }, name, now), touched: now })
  }
}
