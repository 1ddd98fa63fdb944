// A section of the plan as a drawing: every part in its place, hatched by what was seen. A screen may note something on
// some of the parts; then these alone stand out.
/** @import { OutsideView, PartView, PlanCell, PlanSection } from '../types/api.d.ts' */
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { foundInWords } from './outside.js'
import { symbolDrawing } from './symbols.js'

const text = words.plan

/** @typedef {object} Note what a screen notes on a part
 * @property {string} words for those who hear the page
 * @property {unknown} mark drawn over the part
 *
 * @typedef {PartView | OutsideView} Drawn what is drawn in a place
 *
 * @typedef {object} Drawing a section with all that is drawn in it
 * @property {PlanSection} section
 * @property {Map<string, Drawn>} parts
 * @property {Map<string, Note>} [notes]
 * @property {(part: string) => string} address where a tap leads
 *
 * @typedef {object} Grid where a section's rows and columns lie in the page's grid
 * @property {boolean} isLabelled row labels have a column of their own
 * @property {number} column the grid's number for the first column
 * @property {number} row the grid's number for the first row, below the heads
 */

/** @param {Pick<Drawn, 'seen' | 'worst'>} part */
export const seenInWords = ({ seen, worst }) => (worst ? text.worn(worst) : text.states[seen])

/** @param {Drawn} part */
const inWords = (part) => ('kind' in part ? seenInWords(part) : foundInWords(part))

/** Up to this many columns, a column of row labels fits beside them on a phone. */
const ROOM_FOR_LABELS = 6

/** @param {PlanSection} section @returns {Grid} */
function gridOf({ columns, row_labels }) {
  const isLabelled = columns <= ROOM_FOR_LABELS && row_labels.some(Boolean)
  return { isLabelled, column: isLabelled ? 2 : 1, row: 2 }
}

/** @param {Drawing} all */
export function drawing(all) {
  const { section } = all
  const grid = gridOf(section)
  const cells = [...section.cells].sort((a, b) => a.row - b.row || a.column - b.column)
  return html`
    <ul class=${`plan-grid ${grid.isLabelled ? 'plan-labelled' : ''} ${all.notes ? 'plan-noted' : ''}`}
      .style=${`--columns: ${section.columns}; --rows: ${section.rows}`}>
      ${section.column_heads.map((kinds, column) =>
        columnHead(kinds, column + grid.column, column === section.centre_line))}
      ${section.centre_line === null ? '' : shaft(section.rows, section.centre_line + grid.column, grid)}
      ${section.row_labels.map((label, row) => rowLabel(section, label, row, grid))}
      ${cells.map((cell) => place(all, grid, cell))}
    </ul>`
}

/** The parts' own names say all that the heads and labels say, so these are for the eye alone.
 * @param {string[]} kinds @param {number} column @param {boolean} isOverFront */
const columnHead = (kinds, column, isOverFront) =>
  kinds.length === 0 ? '' : html`
    <li class=${`column-head ${isOverFront ? 'over-front' : ''}`} aria-hidden="true"
      .style=${`grid-column: ${column}; grid-row: 1`}>
      ${kinds.map((kind) => html`<span>${kind}</span>`)}
    </li>`

/** The centre line, from front to rear. @param {number} rows @param {number} column @param {Grid} grid */
const shaft = (rows, column, grid) => html`
  <li class="plan-end plan-front" .style=${`grid-column: ${column}; grid-row: ${grid.row - 1}`}>${text.front}</li>
  <li class="centre-line" aria-hidden="true"
    .style=${`grid-column: ${column}; grid-row: ${grid.row} / span ${rows}`}></li>
  <li class="plan-end" .style=${`grid-column: ${column}; grid-row: ${grid.row + rows}`}>${text.rear}</li>`

/** A row's label stands in its first column, unless a part is there: that part then carries it.
 * @param {PlanSection} section @param {string} label @param {number} row @param {Grid} grid */
function rowLabel(section, label, row, grid) {
  const isTaken = !grid.isLabelled && section.cells.some((cell) => cell.row === row && cell.column === 0)
  if (!label || isTaken) return ''
  return html`<li class="row-label" aria-hidden="true"
    .style=${`grid-column: 1; grid-row: ${row + grid.row}`}>${label}</li>`
}

/** A part in its place, as a way to it. Where notes are drawn, the ear and the keyboard go by the noted parts alone;
 * the others are there for the eye and the finger. @param {Drawing} all @param {Grid} grid @param {PlanCell} cell */
function place({ section, parts, notes, address }, grid, cell) {
  const part = parts.get(cell.part)
  if (!part) return ''
  const note = notes?.get(cell.part)
  const isAside = notes && !note
  const carriesLabel = !grid.isLabelled && cell.column === 0
  const mark = (carriesLabel && section.row_labels[cell.row]) || cell.mark
  return html`
    <li .style=${`grid-column: ${cell.column + grid.column}; grid-row: ${cell.row + grid.row}`}
      aria-hidden=${isAside ? 'true' : nothing}>
      <a class=${`plan-part ${part.seen} symbol-${cell.symbol} ${isAside ? 'plan-aside' : ''}`}
        href=${address(cell.part)}
        tabindex=${isAside ? '-1' : nothing} aria-label="${part.label}, ${note ? note.words : inWords(part)}"
        aria-current=${state.route.part === cell.part ? 'true' : nothing}>
        <svg viewBox="0 0 48 48" preserveAspectRatio=${cell.symbol === 'item' ? 'none' : nothing} aria-hidden="true"
          focusable="false">${symbolDrawing(cell.symbol, part.worst)}</svg>
        ${mark ? html`<span class="plan-mark" aria-hidden="true"><span data-mark=${mark}></span></span>` : ''}
        ${note ? note.mark : ''}
      </a>
    </li>`
}
