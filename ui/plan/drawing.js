// The plan as a drawing: every part in its place, hatched by what was seen. A screen may note something on some of the
// parts; then these alone stand out.
/** @import { JobView, PartView, PlanCell, PlanSection } from '../types/api.d.ts' */
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { toPart } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { symbolDrawing } from './symbols.js'

const text = words.plan

/** @typedef {object} Note what a screen notes on a part
 * @property {string} words for those who hear the page
 * @property {unknown} mark drawn over the part
 */

/** All sections; with notes, those that have a part noted.
 * @param {JobView} view @param {Map<string, Note>} [notes] @param {(part: string) => string} [address] where a tap
 * leads */
export function drawing(view, notes, address = (part) => toPart(view.job, part)) {
  const parts = new Map(view.assessment.parts.map((part) => [part.part, part]))
  const sections = view.plan?.sections ?? []
  const shown = notes ? sections.filter(({ cells }) => cells.some(({ part }) => notes.has(part))) : sections
  return shown.map((section, nth) => drawn({ section, parts, notes, address, grid: gridOf(section) }, nth))
}

/** @param {PartView} part */
export const seenInWords = ({ seen, worst }) => (worst ? text.worn(worst) : text.states[seen])

/** @typedef {object} Grid where a section's rows and columns lie in the page's grid
 * @property {boolean} isLabelled row labels have a column of their own
 * @property {number} column the grid's number for the first column
 * @property {number} row the grid's number for the first row, below the heads and the word for the front
 *
 * @typedef {object} Drawn a section with all that is drawn in it
 * @property {PlanSection} section
 * @property {Map<string, PartView>} parts
 * @property {Map<string, Note> | undefined} notes
 * @property {(part: string) => string} address
 * @property {Grid} grid
 */

/** Up to this many columns, a column of row labels fits beside them on a phone. */
const ROOM_FOR_LABELS = 6

/** @param {PlanSection} section @returns {Grid} */
function gridOf({ columns, row_labels }) {
  const isLabelled = columns <= ROOM_FOR_LABELS && row_labels.some(Boolean)
  return { isLabelled, column: isLabelled ? 2 : 1, row: 3 }
}

/** @param {Drawn} all @param {number} nth */
function drawn(all, nth) {
  const { section, grid } = all
  const id = `plan-section-${nth}`
  const cells = [...section.cells].sort((a, b) => a.row - b.row || a.column - b.column)
  return html`
    <section class="plan-section" aria-labelledby=${id}>
      <h2 id=${id}>${section.title}</h2>
      <ul class=${`plan-grid ${grid.isLabelled ? 'plan-labelled' : ''} ${all.notes ? 'plan-noted' : ''}`}
        .style=${`--columns: ${section.columns}`}>
        ${section.column_heads.map((kinds, column) => columnHead(kinds, column + grid.column))}
        ${section.centre_line === null ? '' : shaft(section.rows, section.centre_line + grid.column, grid)}
        ${section.row_labels.map((label, row) => rowLabel(section, label, row, grid))}
        ${cells.map((cell) => place(all, cell))}
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
 * the others are there for the eye and the finger. @param {Drawn} all @param {PlanCell} cell */
function place({ section, parts, notes, address, grid }, cell) {
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
        tabindex=${isAside ? '-1' : nothing} aria-label="${part.label}, ${note ? note.words : seenInWords(part)}"
        aria-current=${state.route.part === cell.part ? 'true' : nothing}>
        <svg viewBox="0 0 48 48" aria-hidden="true" focusable="false">${symbolDrawing(cell.symbol, part.worst)}</svg>
        ${mark ? html`<span class="plan-mark" aria-hidden="true"><span data-mark=${mark}></span></span>` : ''}
        ${note ? note.mark : ''}
      </a>
    </li>`
}
