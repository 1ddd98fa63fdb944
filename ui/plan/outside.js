// What is looked at before the engine is opened and beside its parts: it tells how the damage got in. It stands on the
// plan as a section of its own.
/** @import { JobView, OutsideView, PlanSection } from '../types/api.d.ts' */
import { words } from '../words.js'

const text = words.plan

const COLUMNS = 4

/** @param {JobView} view @returns {PlanSection} */
export const outsideSection = ({ assessment: { outside } }) => ({
  title: text.before,
  rows: Math.ceil(outside.length / COLUMNS),
  columns: COLUMNS,
  centre_line: null,
  column_heads: [],
  row_labels: [],
  cells: outside.map(({ part, label }, nth) => ({
    part,
    column: nth % COLUMNS,
    row: Math.floor(nth / COLUMNS),
    symbol: 'item',
    mark: label,
    half: null,
    port: null,
    bank: null,
  })),
})

/** What was found, in words. @param {Pick<OutsideView, 'seen' | 'findings'>} here */
export const foundInWords = ({ seen, findings }) =>
  findings.length === 0
    ? text.states[seen]
    : findings.map(({ name, grade }) => words.part.tagged(name, grade)).join('; ')
