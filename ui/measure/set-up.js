// What is measured, when in the rebuild, with what, and how the instrument is set. One line that unfolds.
/** @import { Bench } from './pad.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { catalogue, choicesOf, kindOf, quantityOf } from '../catalogue.js'
import { choice } from '../controls/choice.js'
import { foundDraft } from '../controls/found-draft.js'
import { input, tick } from '../controls/input.js'
import { toInstruments } from '../route.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { note, shown, turnTo } from './pad.js'
import { useOf } from './reading.js'
import { foundSetting, instrumentFor, instrumentsOf, nameIt, nameOn, set, settingOf } from './tools.js'
import { readQuantities, stepsOf } from './walk.js'

const text = words.measure

/** @param {Bench} here */
export function setUp(here) {
  const { view, part, quantity, phase } = here
  const instrument = instrumentFor(view, useOf(here))
  const quantities = readQuantities(part.kind).map(({ id, words: label }) => ({ value: id, label: capitalised(label) }))
  const phases = catalogue().phases.map(({ id, label }) => ({ value: id, label: capitalised(label) }))
  const named = quantities.find(({ value }) => value === quantity)?.label ?? ''
  const isOpen = shown.isSettingUp ?? foundSetting(useOf(here)).isFound
  /** @param {Event} event */
  const onToggle = (event) => {
    const { open } = /** @type {HTMLDetailsElement} */ (event.currentTarget)
    if (open !== isOpen) note({ isSettingUp: open })
  }
  const when = phases.find(({ value }) => value === phase)?.label.toLowerCase() ?? ''
  return html`
    <details class="set-up" .open=${live(isOpen)} @toggle=${onToggle}>
      <summary>
        <span><strong>${text.setUp}:</strong> ${[
          named,
          when,
          instrument?.name ?? text.noInstrument.toLowerCase(),
        ].join(' · ')}</span>
      </summary>
      ${choice({
        name: 'phase',
        legend: text.phase,
        options: phases,
        value: phase,
        choose: (to) => turnTo({ phase: to }),
      })}
      ${choice({
        name: 'quantity',
        legend: text.quantity,
        options: quantities,
        value: quantity,
        choose: (to) => turnTo({ quantity: to }),
      })}
      ${quantity === 'other' ? nameOf(here) : ''}
      ${instrumentChoice(here, instrument?.id ?? '')}
      ${more(here)}
    </details>`
}

/** Where a run-out has its high spot. @param {Bench} here */
export const highSpot = ({ quantity }) => quantity !== 'run-out' ? '' : input({
  id: 'measure-angle',
  label: text.angle,
  kind: 'number',
  value: shown.angle,
  hint: text.angleHint,
  enterKey: 'done',
  enter: (angle) => note({ angle }),
})

/** @param {Bench} here @param {string} chosen */
function instrumentChoice(here, chosen) {
  const instruments = instrumentsOf(here.view).map(({ id, name }) => ({ value: id, label: name }))
  return html`
    ${choice({
      name: 'instrument',
      legend: text.instrument,
      options: [...instruments, { value: '', label: text.noInstrument }],
      value: chosen,
      choose: (instrument) => set(useOf(here), { instrument }),
    })}
    ${chosen ? '' : html`<p class="hint">${text.noInstrumentHint}</p>`}
    <a class="button" href=${toInstruments('new')}>${text.enterInstrument}</a>`
}

/** @param {Bench} here */
function nameOf({ view, part }) {
  const names = view.sheet.lines
    .filter(({ of }) => of.kind === part.kind && of.quantity === 'other' && of.name)
    .map(({ of }) => of.name ?? '')
  return html`
    ${input({
      id: 'measure-name',
      label: text.name,
      value: nameOn(view.job),
      enterKey: 'done',
      enter: (name) => nameIt(view.job, name),
    })}
    ${names.length === 0 ? '' : html`
      <div class="bar-inline">
        ${[...new Set(names)].map((name) =>
          html`<button type="button" @click=${() => nameIt(view.job, name)}>${name}</button>`)}
      </div>`}`
}

/** @param {Bench} here */
function more(here) {
  const use = useOf(here)
  const setting = settingOf(use)
  const optional = stepsOf(here.part, here.quantity, nameOn(here.view.job))
    .filter(({ needed }) => !needed)
    .map(({ station }) => station)
  const grows = kindOf(here.part.kind).material !== null
  return html`
    ${foundDraft(foundSetting(use))}
    ${optional.length > 0 ? tick({
      label: text.optional([...new Set(optional)].join(', ')),
      checked: setting.optional,
      enter: (on) => set(use, { optional: on }),
    }) : ''}
    ${input({
      id: 'measure-set-to',
      label: text.setTo,
      kind: 'length',
      value: setting.setTo,
      hint: text.setToHint,
      enterKey: 'done',
      enter: (setTo) => set(use, { setTo }),
    })}
    ${quantityOf(here.part.kind, here.quantity).is_over_a_length
      ? input({
        id: 'measure-over',
        label: text.over,
        kind: 'length',
        value: setting.over,
        enterKey: 'done',
        enter: (over) => set(use, { over }),
      })
      : ''}
    ${grows ? html`
      <details class="part-warm" ?open=${setting.celsius !== ''}>
        <summary>${text.more}</summary>
        ${input({
          id: 'measure-celsius',
          label: text.celsius,
          kind: 'number',
          value: setting.celsius,
          hint: text.celsiusHint,
          enterKey: 'done',
          enter: (celsius) => set(use, { celsius }),
        })}
        ${choice({
          name: 'material',
          legend: text.material,
          options: choicesOf(catalogue().materials),
          value: setting.material,
          choose: (material) => set(use, { material }),
        })}
      </details>` : ''}`
}
