// One line of the spec sheet: what it is about, the range of a new part, how far it may wear.
/** @import { Datum, JobView, PartKind, Port, Quantity, Station } from '../types/api.d.ts' */
/** @import { Entered } from './line-entry.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue, kindOf, quantityOf } from '../catalogue.js'
import { choice, optionsOf } from '../controls/choice.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { allKeysButton, input, pick, tick } from '../controls/input.js'
import { append, submit } from '../edits/queue.js'
import { UNIT_MARKS } from '../lengths.js'
import { swap, toScreen } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { asKey, asLine, asSaved, blank, rememberPage } from './line-entry.js'
import { lineId, lineOf, newLine, ringsOf } from './line-key.js'

const text = words.sheet

/** @typedef {(change: Partial<Entered>) => void} Enter */

/** @param {JobView} view @param {ReturnType<typeof lineOf>} there */
export function lineForm(view, there) {
  const { job } = view
  const saved = there?.line
  const name = `line ${job} ${saved ? lineId(saved.of) : state.route.subject}`
  const form = formOf(name, () => (saved ? asSaved(saved) : blank(job, ...asked())))
  const { entered, refusal, enter, send, forget } = form
  /** @param {Event} event @param {boolean} [another] */
  const save = async (event, another = false) => {
    event.preventDefault()
    const isSaved = await send(async (entered) => submit(job, { do: 'state-line', line: asLine(entered, view) }))
    if (!isSaved) return
    rememberPage(job, entered)
    if (!another) return swap(toScreen(job, 'sheet'))
    const next = following(entered)
    swap(toScreen(job, 'sheet', newLine(entered.kind || undefined, next)))
  }
  const drop = async () => {
    if (!saved || !(await append(job, { do: 'drop-line', of: saved.of }))) return
    forget()
    swap(toScreen(job, 'sheet'))
  }
  const isReady = entered.kind !== '' && entered.quantity !== ''
  return {
    title: there ? capitalised(`${kindOf(there.line.of.kind).name}, ${there.words.aspect}`) : text.newLine,
    body: html`
      <form class="entry" id="line" @submit=${save}>
        ${foundDraft(form)}
        ${saved ? '' : subject(view, entered, enter)}
        ${!saved && isReady ? already(view, entered) : ''}
        ${isReady ? figures(view, entered, enter, refusal) : ''}
      </form>
      ${saved ? html`<button type="button" class="quiet" @click=${drop}>${text.dropLine}</button>` : ''}`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toScreen(job, 'sheet')}>${text.toSheet}</a>
        ${saved
          ? ''
          : html`<button type="button" ?disabled=${!isReady}
            @click=${(/** @type {Event} */ event) => save(event, true)}>${text.saveNext}</button>`}
        <button class="primary" form="line" ?disabled=${!isReady}>${text.saveLine}</button>
      </div>`,
  }
}

/** What a new line was asked to be about. @returns {[PartKind | '', Quantity | '']} */
function asked() {
  const [, kind, quantity] = state.route.subject.split('.')
  const found = catalogue().kinds.find(({ id }) => id === kind)
  return [found?.id ?? '', found?.quantities.find(({ id }) => id === quantity)?.id ?? '']
}

/** What manuals give next of the same kind of part. @param {Entered} entered */
function following({ kind, quantity }) {
  const all = kind ? kindOf(kind).quantities : []
  return all[all.findIndex(({ id }) => id === quantity) + 1]?.id
}

/** @param {JobView} view @param {Entered} entered @param {Enter} enter */
function subject(view, entered, enter) {
  const { kind, quantity } = entered
  const places = { station: /** @type {const} */ (''), port: /** @type {const} */ (''), numbers: '', name: '' }
  return html`
    ${pick({
      id: 'line-kind',
      label: text.kind,
      blank: text.choose,
      value: kind,
      options: kindsFor(view).map((id) => ({ value: id, label: capitalised(kindOf(id).name) })),
      choose: (kind) => enter({ kind, quantity: kindOf(kind).quantities[0]?.id ?? '', ...places }),
    })}
    ${kind === '' ? '' : pick({
      id: 'line-quantity',
      label: text.quantity,
      blank: text.choose,
      value: quantity,
      options: kindOf(kind).quantities.map(({ id, words }) => ({ value: id, label: capitalised(words) })),
      choose: (quantity) => enter({ quantity, ...places }),
    })}
    ${kind === '' || quantity === '' ? '' : where(view, kind, quantity, entered, enter)}`
}

/** @param {JobView} view @param {PartKind} kind @param {Quantity} quantity @param {Entered} entered
 * @param {Enter} enter */
function where({ assessment }, kind, quantity, entered, enter) {
  const rings = ringsOf(kind, quantity)
  const alike = assessment.parts.filter((part) => part.kind === kind).length
  return html`
    ${quantity === 'other'
      ? input({
        id: 'line-name',
        label: text.ownName,
        value: entered.name,
        hint: text.ownNameHint,
        enter: (name) => enter({ name }),
      })
      : ''}
    ${rings.length === 0 ? '' : choice({
      name: 'ring',
      legend: text.ring,
      options: [
        { value: /** @type {Station | ''} */ (''), label: text.everyRing },
        ...rings.map(({ spot, label }) =>
          ({ value: /** @type {Station} */ (spot.station), label: capitalised(label) })),
      ],
      value: entered.station,
      choose: (station) => enter({ station }),
    })}
    ${!kindOf(kind).is_by_port ? '' : choice({
      name: 'port',
      legend: text.port,
      options: [{ value: /** @type {Port | ''} */ (''), label: text.bothPorts }, ...optionsOf(text.portChoices)],
      value: entered.port,
      choose: (port) => enter({ port }),
    })}
    ${alike === 1
      ? ''
      : input({
        id: 'line-numbers',
        label: text.numbers,
        value: entered.numbers,
        hint: text.numbersHint,
        enter: (numbers) => enter({ numbers }),
      })}`
}

/** A line about the same takes the place of the one that is there. @param {JobView} view @param {Entered} entered */
function already(view, entered) {
  const there = lineOf(view, lineId(asKey(entered)))
  if (!there) return ''
  return html`<p class="notice">${text.already([there.words.new, there.words.worn].filter(Boolean).join('; '))}</p>`
}

/** Kinds of this engine first come first; without an engine, all. @param {JobView} view */
function kindsFor({ assessment }) {
  const present = [...new Set(assessment.parts.map(({ kind }) => kind))]
  const measured = catalogue().kinds.filter(({ quantities }) => quantities.length > 0)
  return present.length > 0 ? present : measured.map(({ id }) => id)
}

/** @param {JobView} view @param {Entered} entered @param {Enter} enter @param {string} refusal */
function figures({ sheet }, entered, enter, refusal) {
  const { wears_smaller } = quantityOf(
    /** @type {PartKind} */ (entered.kind),
    /** @type {Quantity} */ (entered.quantity),
  )
  const isLeast = wears_smaller || entered.least
  const mark = UNIT_MARKS[sheet.head.unit]
  /** @param {'min' | 'max' | 'limit' | 'by' | 'per' | 'given'} key @param {string} label @param {string} [hint] */
  const length = (key, label, hint) =>
    input({
      id: `line-${key}`,
      label,
      hint,
      kind: 'length',
      value: entered[key],
      enter: (typed) => enter({ [key]: typed }),
    })
  const { by, per, given, beyond, datum } = entered
  const isProportional = Boolean(by || per || given || beyond || datum)
  return html`
    <div class="pair">
      ${length('min', text.min(mark))}
      ${length('max', text.max(mark))}
    </div>
    ${length(
      'limit',
      isLeast ? text.limitLeast(mark) : text.limitMost(mark),
      wears_smaller ? text.limitLeastHint : entered.least ? '' : text.limitMostHint,
    )}
    ${wears_smaller ? '' : tick({ label: text.isLeast, checked: entered.least, enter: (least) => enter({ least }) })}
    ${tick({ label: text.fails, checked: entered.fails, enter: (fails) => enter({ fails }) })}
    <p role="alert" class="refusal">${capitalised(refusal)}</p>
    ${allKeysButton()}
    ${input({
      id: 'line-source',
      label: text.page,
      value: entered.source,
      hint: text.pageHint,
      enter: (source) => enter({ source }),
    })}
    <details class="more" ?open=${isProportional}>
      <summary>${text.proportion}</summary>
      <p class="hint">${text.proportionHint}</p>
      <div class="pair">${length('by', text.by(mark))}${length('per', text.per(mark))}</div>
      ${choice({
        name: 'base',
        legend: text.base,
        options: optionsOf(text.bases),
        value: entered.base,
        choose: (base) => enter({ base }),
      })}
      ${entered.base === 'given' ? length('given', text.given(mark)) : ''}
      ${tick({ label: text.beyondRange, checked: entered.beyond, enter: (beyond) => enter({ beyond }) })}
      ${choice({
        name: 'datum',
        legend: text.datum,
        options: [{ value: /** @type {Datum | ''} */ (''), label: text.noDatum }, ...optionsOf(text.datums)],
        value: entered.datum,
        choose: (datum) => enter({ datum }),
      })}
    </details>`
}
