// The engine as a plan: every part in its place, hatched by what was seen.
/** @import { JobView, PartView, PlanCell, PlanSection } from '../types/api.d.ts' */
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { key } from '../hatching/key.js'
import { toPart, toSheet } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { progress } from './progress.js'
import { symbolDrawing } from './symbols.js'

const text = words.plan

/** @param {JobView} view */
export function plan(view) {
  const title = words.screens.plan
  if (!view.plan) {
    return { title, body: html`<p>${text.noEngine}</p><a class="button" href=${toSheet(view.job, 'intake')}>${words.marks.toIntake}</a>` }
  }
  const parts = new Map(view.assessment.parts.map((part) => [part.part, part]))
  const next = view.assessment.parts.find((part) => part.seen === 'not-looked')
  return {
    title,
    body: html`
      <p class="engine-line">${view.assessment.engine}</p>
      ${view.assessment.notices.map((notice) => html`<p class="notice">${notice}</p>`)}
      ${progress(view.assessment.progress)}
      ${view.plan.sections.map((section, nth) => drawn(view.job, section, nth, parts))}
      ${key()}`,
    bar: next ? html`<div class="bar"><a class="button primary" href=${toPart(view.job, next.part)}>${text.next}</a></div>` : '',
  }
}

/** Up to this many columns, a column of row labels fits beside them on a phone. */
const ROOM_FOR_LABELS = 6

/** @typedef {object} Grid where a section's rows and columns lie in the page's grid
 * @property {boolean} isLabelled row labels have a column of their own
 * @property {number} column the grid's number for the first column
 * @property {number} row the grid's number for the first row, below the heads and the word for the front
 */

/** @param {string} job @param {PlanSection} section @param {number} nth @param {Map<string, PartView>} parts */
function drawn(job, section, nth, parts) {
  const isLabelled = section.columns <= ROOM_FOR_LABELS && section.row_labels.some(Boolean)
  const grid = { isLabelled, column: isLabelled ? 2 : 1, row: 3 }
  const id = `plan-section-${nth}`
  const cells = [...section.cells].sort((a, b) => a.row - b.row || a.column - b.column)
  return html`
    <section class="plan-section" aria-labelledby=${id}>
      <h2 id=${id}>${section.title}</h2>
      <ul class=${isLabelled ? 'plan-grid plan-labelled' : 'plan-grid'} .style=${`--columns: ${section.columns}`}>
        ${section.column_heads.map((kinds, column) => columnHead(kinds, column + grid.column))}
        ${section.centre_line === null ? '' : shaft(section.rows, section.centre_line + grid.column, grid)}
        ${section.row_labels.map((label, row) => rowLabel(section, label, row, grid))}
        ${cells.map((cell) => place(job, section, cell, grid, parts.get(cell.part)))}
      </ul>
    </section>`
}

/** The parts' own names say all that the heads and labels say, so these are for the eye alone.
 * @param {string[]} kinds @param {number} column */
const columnHead = (kinds, column) =>
  kinds.length === 0 ? '' : html`
    <li class="column-head" aria-hidden="true" .style=${`grid-column: ${column}; grid-row: 1`}>
      ${kinds.map((kind) => html`<span>${kind}</span>`)}
    </li>`

/** The centre line, from front to rear. @param {number} rows @param {number} column @param {Grid} grid */
const shaft = (rows, column, grid) => html`
  <li class="plan-end" .style=${`grid-column: ${column}; grid-row: ${grid.row - 1}`}>${text.front}</li>
  <li class="centre-line" aria-hidden="true" .style=${`grid-column: ${column}; grid-row: ${grid.row} / span ${rows}`}></li>
  <li class="plan-end" .style=${`grid-column: ${column}; grid-row: ${grid.row + rows}`}>${text.rear}</li>`

/** A row's label stands in its first column, unless a part is there: that part then carries it.
 * @param {PlanSection} section @param {string} label @param {number} row @param {Grid} grid */
function rowLabel(section, label, row, grid) {
  const isTaken = !grid.isLabelled && section.cells.some((cell) => cell.row === row && cell.column === 0)
  if (!label || isTaken) return ''
  return html`<li class="row-label" aria-hidden="true" .style=${`grid-column: 1; grid-row: ${row + grid.row}`}>${label}</li>`
}

/** @param {string} job @param {PlanSection} section @param {PlanCell} cell @param {Grid} grid @param {PartView | undefined} part */
function place(job, section, cell, grid, part) {
  if (!part) return ''
  const at = `grid-column: ${cell.column + grid.column}; grid-row: ${cell.row + grid.row}`
  const carriesLabel = !grid.isLabelled && cell.column === 0
  const mark = (carriesLabel && section.row_labels[cell.row]) || cell.mark
  const isOpen = state.route.part === cell.part
  return html`
    <li .style=${at}>
      <a class=${`plan-part ${part.seen} symbol-${cell.symbol}`} href=${toPart(job, cell.part)}
        aria-label="${part.label}, ${seenInWords(part)}" aria-current=${isOpen ? 'true' : nothing}>
        <svg viewBox="0 0 48 48" aria-hidden="true" focusable="false">${symbolDrawing(cell.symbol, part.worst)}</svg>
        ${mark ? html`<span class="plan-mark" aria-hidden="true"><span data-mark=${mark}></span></span>` : ''}
      </a>
    </li>`
}

/** @param {PartView} part */
export const seenInWords = ({ seen, worst }) => (worst ? text.worn(worst) : text.states[seen])
