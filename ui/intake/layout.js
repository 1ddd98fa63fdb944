// The layout of the engine, entered once. What can't be is refused by the backend; the reason is shown at the form and
// what was entered stays.
/** @import { Arrangement, JobView } from '../types/api.d.ts' */
/** @import { Form } from '../controls/form.js' */
/** @import { Entered, Setter } from './layout-form.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue } from '../catalogue.js'
import { choice, optionsOf } from '../controls/choice.js'
import { count } from '../controls/count.js'
import { foundDraft } from '../controls/found-draft.js'
import { submit } from '../edits/queue.js'
import { go } from '../route.js'
import { words } from '../words.js'
import { construction } from './construction.js'
import { startOf } from './defaults.js'
import { crankSet, madeSet, numberingSet, valveGearSet } from './layout-set.js'
import { layoutForm, setter } from './layout-form.js'
import { setFold } from './set-fold.js'
import { starts } from './starts.js'
import { valveGear } from './valve-gear.js'

const text = words.layout

/** The form's name for the button at the foot. */
export const LAYOUT_FORM = 'intake-layout'

/** @param {JobView} view @param {string} onward where to go once it is saved */
export function layout(view, onward) {
  const form = layoutForm(view)
  const { arrangement } = form.entered
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    const isSaved = await form.send(async ({ arrangement }) => {
      if (arrangement) await submit(view.job, { do: 'arrange', arrangement })
    })
    if (isSaved) go(onward)
  }
  /** @param {Arrangement} start */
  const begin = (start) => {
    form.enter({ arrangement: start, touched: [] })
    // The buttons are folded away once a start is chosen: the keyboard goes on to what came of it.
    queueMicrotask(() => {
      const first = /** @type {HTMLElement | null} */ (document.querySelector('.folded > summary'))
      first?.focus({ preventScroll: true })
    })
  }
  return html`
    <form class="entry" id=${LAYOUT_FORM} aria-label=${words.intake.arrangement} @submit=${save}>
      ${foundDraft(form)}
      ${arrangement === null
        ? starts(view.job, begin)
        : html`
          ${details(arrangement, form, (layout) =>
            form.enter({ arrangement: startOf(catalogue(), layout), touched: [] }))}
          ${setFold({ name: text.startAnew, set: '', body: starts(view.job, begin) })}`}
      <p role="alert" class="refusal">${form.refusal}</p>
    </form>`
}

/** What stands, folded by what it is about; unfolded where it was found half entered.
 * @param {Arrangement} arrangement @param {Form<Entered>} form
 * @param {(layout: Arrangement['layout']) => void} stand */
function details(arrangement, form, stand) {
  const set = setter(arrangement, form)
  const isOpen = (/** @type {(keyof Arrangement)[]} */ ...names) =>
    form.isFound && names.some((name) => form.entered.touched.includes(name))
  return html`
    ${setFold({
      name: text.crank,
      set: crankSet(arrangement),
      body: crank(arrangement, set, stand),
      isOpen: isOpen('cylinders', 'mains', 'thrust_main', 'rods_per_crankpin'),
    })}
    ${setFold({
      name: text.valveGear,
      set: valveGearSet(arrangement),
      body: valveGear(arrangement, set),
      isOpen: isOpen('camshaft', 'cam_bearings', 'tappets', 'valves_per_cylinder'),
    })}
    ${setFold({
      name: text.numbering,
      set: numberingSet(arrangement),
      body: numbering(arrangement, set),
      isOpen: isOpen('numbering', 'front'),
    })}
    ${setFold({
      name: text.construction,
      set: madeSet(arrangement),
      body: construction(arrangement, set),
      isOpen: isOpen('construction', 'oil_from'),
    })}`
}

/** @param {Arrangement} arrangement @param {Setter} set @param {(layout: Arrangement['layout']) => void} stand */
const crank = (arrangement, set, stand) => html`
  ${choice({
    name: 'layout',
    legend: text.layout,
    options: catalogue().arrangements.map((start) => ({ value: start.arrangement.layout, label: start.name })),
    value: arrangement.layout,
    choose: stand,
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
  })}`

/** @param {Arrangement} arrangement @param {Setter} set */
function numbering({ numbering, layout, front }, set) {
  /** @param {Partial<Arrangement['numbering']>} part */
  const renumber = (part) => set('numbering')({ ...numbering, ...part })
  return html`
    ${choice({
      name: 'front',
      legend: text.front,
      options: optionsOf(text.fronts),
      value: front,
      choose: set('front'),
    })}
    ${choice({
      name: 'from',
      legend: text.from,
      options: optionsOf(text.ends),
      value: numbering.from,
      choose: (from) => renumber({ from }),
    })}
    ${layout === 'inline' ? '' : html`
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
