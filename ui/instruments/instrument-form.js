// One instrument. Its kind comes first, since that fills in what such an instrument usually achieves.
/** @import { Instrument, InstrumentKind } from '../types/api.d.ts' */
/** @import { ShopUnit } from './usual.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { dropInstrument, keepInstrument } from '../backend.js'
import { catalogue, instrumentKindOf } from '../catalogue.js'
import { choice, optionsOf } from '../controls/choice.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { allKeysButton, input } from '../controls/input.js'
import { today } from '../dates.js'
import { isMetric, withUnit } from '../lengths.js'
import { swap, toInstruments } from '../route.js'
import { attempt, state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { shopUnit } from './usual.js'

const text = words.instruments

/**
 * @typedef {object} Entered
 * @property {InstrumentKind | ''} kind
 * @property {ShopUnit} unit
 * @property {string} name
 * @property {string} resolution
 * @property {string} uncertainty
 * @property {string} zero
 * @property {string} ball
 * @property {string} checked
 */

/** @param {Instrument | undefined} saved */
export function instrumentForm(saved) {
  const form = formOf(`instrument ${saved?.id ?? 'new'}`, () => (saved ? asSaved(saved) : blank()))
  const { entered, refusal, enter } = form
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    const isKept = await form.send(async (entered) => {
      state.shelf = await keepInstrument(asInstrument(entered, saved?.id ?? newId(entered)))
      state.notice = words.frame.saved
    })
    if (isKept) swap(toInstruments())
  }
  const drop = () =>
    attempt(async () => {
      if (!saved) return
      state.shelf = await dropInstrument(saved.id)
      form.forget()
      swap(toInstruments())
    })
  return {
    title: saved ? saved.name : text.adding,
    body: html`
      <form class="entry" id="instrument" @submit=${save}>
        ${foundDraft(form)}
        ${choice({
          name: 'kind',
          legend: text.kind,
          options: catalogue().instrument_kinds.map(({ id, name }) => ({ value: id, label: capitalised(name) })),
          value: entered.kind || undefined,
          choose: (kind) => enter({ kind, ...filledIn(entered, kind, entered.unit) }),
        })}
        ${entered.kind ? fields(entered, enter) : html`<p class="hint">${text.kindFirst}</p>`}
        <p role="alert" class="refusal">${refusal}</p>
      </form>
      ${saved ? html`
        <details class="drop">
          <summary>${text.drop}</summary>
          <p>${text.dropping}</p>
          <button type="button" @click=${drop}>${text.dropNow(saved.name)}</button>
        </details>` : ''}`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toInstruments()}>${text.toList}</a>
        <button class="primary" form="instrument" ?disabled=${!entered.kind}>${text.save}</button>
      </div>`,
  }
}

/** @param {Entered} entered @param {(change: Partial<Entered>) => void} enter */
function fields(entered, enter) {
  const kind = instrumentKindOf(/** @type {InstrumentKind} */ (entered.kind))
  const habit = kind[entered.unit]
  /** @param {keyof Entered} key @param {string} hint */
  const length = (key, hint) =>
    input({
      id: `instrument-${key}`,
      label: text[key],
      value: entered[key],
      hint,
      kind: 'length',
      enterKey: 'done',
      enter: (typed) => enter({ [key]: typed }),
    })
  /** @param {string} typed @param {string} practice */
  const practice = (typed, practice) => (typed === practice ? text.practice : text.usually(practice))
  return html`
    ${input({
      id: 'instrument-name',
      label: text.name,
      value: entered.name,
      hint: text.nameHint,
      enterKey: 'done',
      enter: (name) => enter({ name }),
    })}
    ${choice({
      name: 'unit',
      legend: text.unit,
      options: optionsOf(text.units),
      value: entered.unit,
      choose: (unit) => enter({ unit, ...filledIn(entered, kind.id, unit) }),
    })}
    <div class="pair">
      ${length('resolution', practice(entered.resolution, habit.resolution))}
      ${length('uncertainty', practice(entered.uncertainty, habit.uncertainty))}
    </div>
    <p class="hint">${text.meaning}</p>
    <div class="pair">
      ${length('zero', text.zeroHint)}
      ${kind.id === 'ball-micrometer' ? length('ball', text.ballHint) : ''}
    </div>
    ${input({
      id: 'instrument-checked',
      label: text.checked,
      value: entered.checked,
      kind: 'date',
      enter: (checked) => enter({ checked }),
    })}
    ${allKeysButton()}`
}

/** What the person has not changed follows the kind and unit.
 * @param {Entered} entered @param {InstrumentKind} kind @param {ShopUnit} unit @returns {Partial<Entered>} */
function filledIn(entered, kind, unit) {
  const before = entered.kind ? instrumentKindOf(entered.kind)[entered.unit] : { resolution: '', uncertainty: '' }
  const now = instrumentKindOf(kind)[unit]
  return {
    resolution: entered.resolution === before.resolution ? now.resolution : entered.resolution,
    uncertainty: entered.uncertainty === before.uncertainty ? now.uncertainty : entered.uncertainty,
    name: entered.name === nameFor(entered.kind) ? nameFor(kind) : entered.name,
  }
}

/** A name of its own: "Outside micrometer 2". @param {InstrumentKind | ''} kind */
function nameFor(kind) {
  if (!kind) return ''
  const name = capitalised(instrumentKindOf(kind).name)
  const alike = state.shelf.instruments.filter((other) => other.kind === kind).length
  return alike === 0 ? name : `${name} ${alike + 1}`
}

/** @returns {Entered} */
const blank = () =>
  ({ kind: '', unit: shopUnit(), name: '', resolution: '', uncertainty: '', zero: '', ball: '', checked: today() })

/** @param {Instrument} saved @returns {Entered} */
const asSaved = ({ kind, name, resolution, uncertainty, zero_error = '', ball = '', checked = '' }) =>
  ({
    kind,
    unit: isMetric(resolution) ? 'millimetre' : 'inch',
    name,
    resolution,
    uncertainty,
    zero: zero_error,
    ball,
    checked,
  })

/** @param {Entered} entered @param {string} id @returns {Instrument} */
function asInstrument({ kind, unit, name, resolution, uncertainty, zero, ball, checked }, id) {
  const length = (/** @type {string} */ typed) => withUnit(typed, unit)
  return {
    id,
    name: name.trim(),
    kind: /** @type {InstrumentKind} */ (kind),
    resolution: length(resolution),
    uncertainty: length(uncertainty),
    ...(zero.trim() && { zero_error: length(zero) }),
    ...(kind === 'ball-micrometer' && ball.trim() && { ball: length(ball) }),
    ...(checked && { checked }),
  }
}

/** Jobs travel between shops, so the name by which readings refer to an instrument is made by chance.
 * @param {Entered} entered */
function newId({ kind }) {
  const chance = [...crypto.getRandomValues(new Uint8Array(6))].map((byte) => byte.toString(16).padStart(2, '0'))
  return `${kind}-${chance.join('')}`
}
