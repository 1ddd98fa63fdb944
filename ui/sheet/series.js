// What the journals can be ground to and the bores be bored to: a table, and a form that is quick to type down.
/** @import { JobView, PartKind } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { kindOf, sizeGroupOf } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { allKeysButton, input, tick } from '../controls/input.js'
import { table } from '../controls/table.js'
import { append, submit } from '../edits/queue.js'
import { UNIT_MARKS, withUnit } from '../lengths.js'
import { toScreen } from '../route.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { doubts } from './doubts.js'
import { newLine } from './line-key.js'
import { asChanges, asRow, emptyRow, nextRow, ofWhat, rowsOf } from './series-rows.js'

const text = words.sheet

/** @import { Series } from './series-rows.js' */

/** @type {Series[]} */
export const GROUPS = ['mains', 'crankpins', 'bores', 'tappets']

/** @param {string} place */
export const groupOf = (place) => GROUPS.find((group) => group === place)

/** @param {JobView} view @param {Series} group */
export function seriesTable(view, group) {
  const { job } = view
  const rows = rowsOf(view.sheet, group)
  return folded({
    name: `${job} sheet series ${group}`,
    summary: html`
      <span class="fold-name">${text.series[group]}</span>
      <span class="fold-facts">${rows.length === 0 ? text.noSeries : text.sizes(rows.length)}</span>`,
    body: html`
      ${rows.length === 0 ? '' : rowsTable(view, group)}
      <a class="button" href=${toScreen(job, 'sheet', group)}>${rows.length === 0
        ? text.enterSeries[group]
        : text.changeSeries[group]}</a>`,
  })
}

/** @param {JobView} view @param {Series} group */
const wordsOf = ({ sheet_words }, group) =>
  sheet_words.series.find((series) => series.group === (group === 'tappets' ? null : group))

/** What is brought to its sizes. @param {Series} group @returns {PartKind} */
const kindIn = (group) => (group === 'tappets' ? 'tappet-bore' : sizeGroupOf(group).kind)

/** Whether the engine has what a series is of. @param {JobView} view @param {Series} group */
export const isAsked = ({ assessment }, group) =>
  group !== 'tappets' || assessment.parts.some(({ kind }) => kind === 'tappet-bore')

/** @param {JobView} view @param {Series} group
 * @param {(size: string) => unknown} [choose] makes each size a button */
function rowsTable(view, group, choose) {
  const { standard, sizes } = wordsOf(view, group) ?? { standard: { own: '', mate: '' }, sizes: [] }
  const asStandard = { head: text.standard, cells: [standard.own, standard.mate, ''] }
  const head = (/** @type {string} */ size) => choose
    ? html`<button type="button" aria-label=${text.changeRow(size)} @click=${() => choose(size)}>${size}</button>`
    : size
  const stated = rowsOf(view.sheet, group).map((row, nth) => ({
    head: head(row.size),
    cells: [
      sizes[nth]?.own ?? '',
      sizes[nth]?.mate ?? '',
      [row.withoutGrinding ? text.slight : '', row.source].filter(Boolean).join('; '),
    ],
  }))
  return table({
    label: text.series[group],
    heads: [text.size, ...text.seriesColumns[group], text.note],
    rows: standard.own ? [asStandard, ...stated] : stated,
  })
}

/** @param {JobView} view @param {Series} group */
export function seriesSheet(view, group) {
  const { job, sheet, assessment } = view
  const rows = rowsOf(sheet, group)
  const form = formOf(`series ${job} ${group}`, () => nextRow(rows))
  const { entered, refusal, enter, send, forget } = form
  const diameter = wordsOf(view, group)?.standard.own
  const kind = kindIn(group)
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    if (!(await send((entered) => submit(
      job,
      ...asChanges(group, entered, (typed) => withUnit(typed, sheet.head.unit)),
    )))) return
    // The size of the next row stands there already.
    queueMicrotask(() =>
      document.getElementById(rowsOf(sheet, group).length === 0 ? 'series-size' : 'series-min')?.focus())
  }
  const drop = async () => {
    if (!(await append(job, dropRow(group, entered.before)))) return
    forget()
    queueMicrotask(() => document.getElementById('series-size')?.focus())
  }
  return {
    title: text.series[group],
    body: html`
      ${doubts(assessment.sheet_doubts)}
      ${diameter ? '' : html`
        <p>${text.standardFirst[group]}</p>
        <a class="button"
          href=${toScreen(job, 'sheet', newLine(kind, 'diameter'))}>${text.enterStandard(kindOf(kind).name)}</a>`}
      ${rows.length > 0 || diameter ? rowsTable(view, group, (size) => {
        const row = rows.find((row) => row.size === size)
        enter(row ? asRow(row) : emptyRow())
        queueMicrotask(() => document.getElementById('series-size')?.focus())
      }) : ''}
      <form class="entry" id="series" aria-labelledby="series-entry" @submit=${save}>
        <h2 id="series-entry">${entered.before ? text.changing(entered.before) : text.newRow}</h2>
        ${foundDraft(form)}
        ${fields(group, UNIT_MARKS[sheet.head.unit], entered, enter)}
        <p role="alert" class="refusal">${capitalised(refusal)}</p>
        <div class="bar-inline">
          ${entered.before ? html`
            <button type="button" @click=${forget}>${text.leaveRow}</button>
            <button type="button" @click=${drop}>${text.dropRow(entered.before)}</button>` : ''}
          <button class="primary">${entered.before ? text.saveRow : text.saveRowNext}</button>
        </div>
        ${allKeysButton()}
      </form>`,
    bar: html`<div class="bar"><a class="button" href=${toScreen(job, 'sheet')}>${text.toSheet}</a></div>`,
  }
}

/** @param {Series} group @param {string} unit @param {import('./series-rows.js').Row} entered
 * @param {(change: Partial<import('./series-rows.js').Row>) => void} enter */
function fields(group, unit, entered, enter) {
  const label = text.seriesFields[group]
  /** @param {'size' | 'min' | 'max' | 'mateMin' | 'mateMax'} key */
  const length = (key) =>
    input({
      id: `series-${key}`,
      label: `${label[key]}, ${unit}`,
      kind: 'length',
      value: entered[key],
      enter: (typed) => enter({ [key]: typed }),
    })
  return html`
    <div class="series-fields">
      ${length('size')}${length('min')}${length('max')}${length('mateMin')}${length('mateMax')}
    </div>
    <p class="hint">${text.workedOutHint[group]}</p>
    ${group === 'bores' || group === 'tappets'
      ? ''
      : tick({
        label: text.withoutGrinding,
        checked: entered.withoutGrinding,
        enter: (withoutGrinding) => enter({ withoutGrinding }),
      })}
    ${input({ id: 'series-source', label: text.page, value: entered.source, enter: (source) => enter({ source }) })}`
}

/** @param {Series} group @param {string} size */
const dropRow = (group, size) =>
  group === 'bores' || group === 'tappets'
    ? { do: /** @type {const} */ ('drop-oversize'), ...ofWhat(group), size }
    : { do: /** @type {const} */ ('drop-undersize'), journals: group, size }
