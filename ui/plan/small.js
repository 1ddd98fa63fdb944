// A section of the plan drawn small, for a glance: what it leads to are its parts at the size of a thumb.
/** @import { PlanSection } from '../types/api.d.ts' */
/** @import { Drawn, Note } from './drawing.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { outline } from './symbols.js'

/** The side of a symbol's square. */
const SIDE = 48

/** @param {PlanSection} section @param {Map<string, Drawn>} parts @param {Map<string, Note>} [notes] */
export const small = ({ columns, rows, cells }, parts, notes) => html`
  <svg class="plan-small" viewBox=${`0 0 ${columns * SIDE} ${rows * SIDE}`} aria-hidden="true" focusable="false"
    .style=${`--columns: ${columns}`}>
    ${cells.map(({ part, row, column, symbol }) => {
      const drawn = parts.get(part)
      const look = `${drawn?.seen ?? ''} ${notes && !notes.has(part) ? 'plan-aside' : ''}`
      return drawn && outline(symbol, drawn.worst, look, `translate(${column * SIDE} ${row * SIDE})`)
    })}
  </svg>`
