// What is laid out side by side and may be taken at once: parts of one kind, a row of the plan, the cylinders of a
// bank. Only what nobody has looked at yet is in it.
/** @import { Arrangement, Bank, JobView, PartKind, PartView, PlanSection } from '../types/api.d.ts' */
import { kindOf } from '../catalogue.js'
import { words } from '../words.js'

const text = words.plan

/**
 * @typedef {object} Group
 * @property {string} id unique in the job
 * @property {string} name short, where its heading stands above it
 * @property {string} what in full, with the number of its parts
 * @property {PartView[]} parts
 */

/** @param {JobView} view @returns {{ title: string, groups: Group[] }[]} */
export function byKind(view) {
  const heads = headsOf(view.plan?.sections ?? [])
  /** @type {Map<PartKind, PartView[]>} */
  const kinds = new Map()
  for (const part of unseen(view)) kinds.set(part.kind, [...(kinds.get(part.kind) ?? []), part])
  return several([...kinds].map(([kind, parts]) => {
    const { name } = kindOf(kind)
    const sides = [...new Set(parts.map(({ part }) => heads.get(part) ?? ''))]
    const ofSide = (/** @type {string} */ side) => {
      const own = parts.filter(({ part }) => heads.get(part) === side)
      const what = text.ofKind(own.length, `${side} ${name}`)
      return { id: `${kind} ${side}`, name: text.sideOf(own.length, side), what, parts: own }
    }
    const what = text.ofKind(parts.length, name)
    const whole = { id: kind, name: what, what, parts }
    return { title: '', groups: [whole, ...(sides.length > 1 ? sides.map(ofSide) : [])] }
  }))
}

/** Which half of the columns of its kind a part stands in: upper or lower, intake or exhaust.
 * @param {PlanSection[]} sections @returns {Map<string, string>} */
const headsOf = (sections) => new Map(sections.flatMap(({ cells, column_heads }) => cells.map(({ part, column }) => {
  const { short } = kindOf(/** @type {PartKind} */ (part.split('.')[0]))
  const head = (column_heads[column] ?? []).find((name) => name.endsWith(short)) ?? ''
  return [part, head.slice(0, -short.length).trim()]
})))

/** By the rows of each section; where these have no names, the section as a whole.
 * @param {JobView} view @returns {{ title: string, groups: Group[] }[]} */
export function byRow(view) {
  const open = new Map(unseen(view).map((part) => [part.part, part]))
  return several((view.plan?.sections ?? []).map(({ title, cells, row_labels }) => {
    /** @type {Map<string, PartView[]>} */
    const rows = new Map()
    let label = title
    row_labels.forEach((own, row) => {
      // A row without a name goes on with that above it.
      label = own || label
      const parts = cells.filter((cell) => cell.row === row).flatMap(({ part }) => open.get(part) ?? [])
      rows.set(label, [...(rows.get(label) ?? []), ...parts])
    })
    const groups = [...rows, ...banks(view.arrangement, [...rows.values()].flat())]
    return { title, groups: groups.map(([name, parts]) => rowOf(title, name, parts)) }
  }))
}

/** @param {string} title @param {string} name @param {PartView[]} parts @returns {Group} */
const rowOf = (title, name, parts) => ({
  id: `${title} ${name}`,
  name: text.inRow(parts.length, name),
  what: text.rowParts(parts.length, name),
  parts,
})

/** What has its place at a cylinder, whose number stands in its id. @type {PartKind[]} */
const AT_CYLINDER = ['bore', 'piston', 'rings', 'rod', 'rod-shell', 'lobe', 'tappet', 'pushrod', 'tappet-bore']

/** @param {Arrangement | null} arrangement @param {PartView[]} parts @returns {[string, PartView[]][]} */
function banks(arrangement, parts) {
  if (!arrangement || arrangement.layout === 'inline') return []
  const own = parts.filter(({ kind }) => AT_CYLINDER.includes(kind))
  return (/** @type {Bank[]} */ (['left', 'right'])).map((bank) =>
    [words.layout.bankSides[bank], own.filter(({ part }) => bankOf(arrangement, Number(part.split('.')[1])) === bank)])
}

/** @param {Arrangement} arrangement @param {number} cylinder @returns {Bank} */
function bankOf({ cylinders, numbering: { banks, first_bank } }, cylinder) {
  const isFirst = banks === 'across' ? cylinder % 2 === 1 : cylinder <= cylinders / 2
  return isFirst === (first_bank === 'left') ? 'left' : 'right'
}

/** @param {JobView} view */
const unseen = ({ assessment }) => assessment.parts.filter(({ seen }) => seen === 'not-looked')

/** Of one part there is nothing to take at once. @param {{ title: string, groups: Group[] }[]} all */
const several = (all) =>
  all
    .map(({ title, groups }) => ({ title, groups: groups.filter(({ parts }) => parts.length > 1) }))
    .filter(({ groups }) => groups.length > 0)
