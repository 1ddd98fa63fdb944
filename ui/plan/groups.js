// What is laid out side by side and may be taken at once: parts of one kind, a row of the plan, the cylinders of a
// bank. Only what nobody has looked at yet is in it.
/** @import { Bank, JobView, PartKind, PartView, PlanCell, PlanSection } from '../types/api.d.ts' */
import { kindOf } from '../catalogue.js'
import { words } from '../words.js'

const text = words.plan

/**
 * @typedef {object} Group
 * @property {string} id unique in the job
 * @property {string} name short, where its heading stands above it
 * @property {string} what in full, with the number of its parts
 * @property {PartView[]} parts
 *
 * @typedef {object} Open a part that nobody has looked at yet, and its place in the plan
 * @property {PlanCell} cell
 * @property {PartView} part
 */

/** In the order of the strip-down. @param {JobView} view @returns {{ title: string, groups: Group[] }[]} */
export function byKind(view) {
  const places = new Map(sectionsOf(view).flatMap((section) => openIn(view, section)).map((own) => [own.part, own]))
  const all = view.assessment.parts.flatMap((part) => places.get(part) ?? [])
  const kinds = [...new Set(all.map(({ part }) => part.kind))]
  return several(kinds.map((kind) => {
    const own = all.filter(({ part }) => part.kind === kind)
    const sides = [...new Set(own.flatMap(({ cell }) => sideOf(cell) ?? []))]
    const bySide = sides.length > 1 ? sides.map((side) => ofSide(side, own)) : []
    return { title: '', groups: [ofKind(kind, own), ...bySide] }
  }))
}

/** @typedef {keyof typeof text.sides} Side upper or lower, intake or exhaust */

/** @param {PlanCell} cell @returns {Side | null} */
const sideOf = ({ half, port }) => half ?? port

/** @param {PartKind} kind @param {Open[]} own @returns {Group} */
function ofKind(kind, own) {
  const what = text.ofKind(own.length, kindOf(kind).name)
  return { id: kind, name: what, what, parts: partsOf(own) }
}

/** @param {Side} side @param {Open[]} all of one kind @returns {Group} */
function ofSide(side, all) {
  const own = all.filter(({ cell }) => sideOf(cell) === side)
  const kind = /** @type {Open} */ (all[0]).part.kind
  return {
    id: `${kind} ${side}`,
    name: text.sideOf(own.length, text.sides[side]),
    what: text.ofKind(own.length, `${text.sides[side]} ${kindOf(kind).name}`),
    parts: partsOf(own),
  }
}

/** By the rows of each section; where these have no names, the section as a whole.
 * @param {JobView} view @returns {{ title: string, groups: Group[] }[]} */
export function byRow(view) {
  return several(sectionsOf(view).map((section, nth) => {
    const all = openIn(view, section)
    // A row without a name goes on with that above it.
    const begins = section.row_labels.flatMap((label, row) => (label || row === 0 ? [row] : []))
    const rows = begins.map((row, at) => {
      const end = begins[at + 1] ?? section.rows
      const own = all.filter(({ cell }) => cell.row >= row && cell.row < end)
      return named(`${nth} ${row}`, section.row_labels[row] || section.title, own)
    })
    const banks = (/** @type {Bank[]} */ (['left', 'right'])).map((bank) =>
      named(`${nth} ${bank}`, words.layout.bankSides[bank], all.filter(({ cell }) => cell.bank === bank)))
    return { title: section.title, groups: [...rows, ...banks] }
  }))
}

/** @param {string} id @param {string} name @param {Open[]} own @returns {Group} */
const named = (id, name, own) =>
  ({ id, name: text.inRow(own.length, name), what: text.rowParts(own.length, name), parts: partsOf(own) })

/** @param {Open[]} own */
const partsOf = (own) => own.map(({ part }) => part)

/** @param {JobView} view @returns {PlanSection[]} */
const sectionsOf = ({ plan }) => plan?.sections ?? []

/** What nobody has looked at yet. @param {JobView} view @param {PlanSection} section @returns {Open[]} */
function openIn({ assessment }, { cells }) {
  const parts = new Map(assessment.parts.map((part) => [part.part, part]))
  return cells.flatMap((cell) => {
    const part = parts.get(cell.part)
    return part?.seen === 'not-looked' ? [{ cell, part }] : []
  })
}

/** Of one part there is nothing to take at once. @param {{ title: string, groups: Group[] }[]} all */
const several = (all) =>
  all
    .map(({ title, groups }) => ({ title, groups: groups.filter(({ parts }) => parts.length > 1) }))
    .filter(({ groups }) => groups.length > 0)
