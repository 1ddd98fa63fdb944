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

/** Below this many columns a column of row labels fits beside them on a phone. */
const ROOM_FOR_LABELS = 6

/** @param {string} job @param {PlanSection} section @param {number} nth @param {Map<string, PartView>} parts */
function drawn(job, section, nth, parts) {
  const isLabelled = section.columns <= ROOM_FOR_LABELS && section.row_labels.some(Boolean)
  const shift = isLabelled ? 2 : 1
  const id = `plan-section-${nth}`
  const cells = [...section.cells].sort((a, b) => a.row - b.row || a.column - b.column)
  return html`
    <section class="plan-section" aria-labelledby=${id}>
      <h2 id=${id}>${section.title}</h2>
      ${section.centre_line === null ? '' : html`<p class="plan-end">${text.front}</p>`}
      <ul class=${isLabelled ? 'plan-grid plan-labelled' : 'plan-grid'} .style=${`--columns: ${section.columns}`}>
        ${section.centre_line === null ? '' : html`
          <li class="centre-line" aria-hidden="true" .style=${`grid-column: ${section.centre_line + shift}; grid-row: 1 / span ${section.rows}`}></li>`}
        ${section.row_labels.map((label, row) => rowLabel(section, label, row))}
        ${cells.map((cell) => place(job, cell, shift, parts.get(cell.part)))}
      </ul>
      ${section.centre_line === null ? '' : html`<p class="plan-end">${text.rear}</p>`}
    </section>`
}

/** The label stands in the first column, unless a part is there that shows its number itself.
 * @param {PlanSection} section @param {string} label @param {number} row */
function rowLabel(section, label, row) {
  const isTaken = section.columns > ROOM_FOR_LABELS && section.cells.some((cell) => cell.row === row && cell.column === 0)
  if (!label || isTaken) return ''
  return html`<li class="row-label" aria-hidden="true" .style=${`grid-column: 1; grid-row: ${row + 1}`}>${label}</li>`
}

/** @param {string} job @param {PlanCell} cell @param {number} shift @param {PartView | undefined} part */
function place(job, cell, shift, part) {
  if (!part) return ''
  const at = `grid-column: ${cell.column + shift} / span ${cell.span}; grid-row: ${cell.row + 1}`
  const isOpen = state.route.part === cell.part
  return html`
    <li .style=${at}>
      <a class=${`plan-part ${part.seen} symbol-${cell.symbol}`} href=${toPart(job, cell.part)}
        aria-label="${part.label}, ${seenInWords(part)}" aria-current=${isOpen ? 'true' : nothing}>
        <svg viewBox="0 0 48 48" aria-hidden="true" focusable="false">${symbolDrawing(cell.symbol, part.worst)}</svg>
        ${cell.mark ? html`<span class="plan-mark" aria-hidden="true"><span data-mark=${cell.mark}></span></span>` : ''}
      </a>
    </li>`
}

/** @param {PartView} part */
export const seenInWords = ({ seen, worst }) => (worst ? text.worn(worst) : text.states[seen])
