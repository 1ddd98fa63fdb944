// Which sections of the plan lie open at first: as many as a thumb likes to scroll. The rest is drawn small.
/** @import { PlanSection } from '../types/api.d.ts' */
/** @import { Drawn } from './drawing.js' */

/** Two sections of so few columns stand side by side. */
const NARROW = 2

/** @param {PlanSection} section */
export const isNarrow = ({ columns }) => columns <= NARROW

/** @param {PlanSection[]} sections @param {Map<string, Drawn>} parts
 * @param {((part: Drawn) => boolean)[]} turns what opens a section, what comes first first
 * @param {number} rows so many in all, but one section in any case @returns {Set<PlanSection>} */
export function openFirst(sections, parts, turns, rows) {
  const inTurn = turns.flatMap((is) => sections.filter(({ cells }) => cells.some((cell) => {
    const part = parts.get(cell.part)
    return part !== undefined && is(part)
  })))
  /** @type {Set<PlanSection>} */
  const open = new Set()
  let left = rows
  for (const section of new Set(inTurn)) {
    const taken = isNarrow(section) ? section.rows / 2 : section.rows
    if (open.size > 0 && taken > left) break
    open.add(section)
    left -= taken
  }
  return open
}
