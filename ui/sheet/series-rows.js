// Rows of a series as they are typed, whichever series it is.
/** @import { Change, Oversize, Oversized, Sheet, SizeGroup, Undersize } from '../types/api.d.ts' */

/** @typedef {SizeGroup | 'tappets'} Series */

/**
 * @typedef {object} Row
 * @property {string} before the size under which it stands on the sheet; empty for a new row
 * @property {string} size
 * @property {string} min
 * @property {string} max
 * @property {string} mateMin of the shell's wall or the piston
 * @property {string} mateMax
 * @property {boolean} withoutGrinding
 * @property {string} source
 */

/** @returns {Row} */
export const emptyRow = () =>
  ({ before: '', size: '', min: '', max: '', mateMin: '', mateMax: '', withoutGrinding: false, source: '' })

/** @param {Sheet} sheet @param {Series} group @returns {Row[]} */
export const rowsOf = (sheet, group) =>
  group === 'bores' || group === 'tappets'
    ? sheet.oversizes.filter(({ of }) => of === ofWhat(group).of).map(fromOversize)
    : sheet.undersizes.filter(({ journals }) => journals === group).map(fromUndersize)

/** A row taken up to be changed. @param {Row} row @returns {Row} */
export const asRow = (row) => ({ ...row, before: row.size })

/** The row to be typed next: its size goes on in the step of the rows before it. @param {Row[]} rows @returns {Row} */
export function nextRow(rows) {
  // Shells for slight wear are no step of the series.
  const steps = rows.filter(({ withoutGrinding }) => !withoutGrinding).map(({ size }) => size)
  return { ...emptyRow(), size: continued(steps), source: rows.at(-1)?.source ?? '' }
}

/** "0.010 in", "0.020 in": then "0.030 in". @param {string[]} sizes */
function continued(sizes) {
  const [last, before] = [sizes.at(-1), sizes.at(-2)]
  const [, number = '', unit = ''] = /^([\d.,]+)(.*)$/.exec(last ?? '') ?? []
  const decimals = number.split(/[.,]/)[1]?.length ?? 0
  const value = figure(last ?? '')
  const next = value + (before === undefined ? value : value - figure(before))
  return value > 0 && next > value ? next.toFixed(decimals) + unit : ''
}

/** @param {string} size */
const figure = (size) => Number.parseFloat(size.replace(',', '.')) || 0

/** The changes that put a row on the sheet.
 * @param {Series} group @param {Row} row @param {(typed: string) => string} length @returns {Change[]} */
export function asChanges(group, row, length) {
  const size = length(row.size)
  /** @param {string} name @param {string} typed */
  const given = (name, typed) => (typed.trim() ? { [name]: length(typed) } : {})
  const common = { size, ...given('min', row.min), ...given('max', row.max), source: row.source.trim() }
  const isMoved = row.before !== '' && row.before !== size
  if (group === 'bores' || group === 'tappets') {
    const of = ofWhat(group)
    const oversize = { ...of, ...common, ...given('piston_min', row.mateMin), ...given('piston_max', row.mateMax) }
    return [
      ...(isMoved ? [/** @type {Change} */ ({ do: 'drop-oversize', ...of, size: row.before })] : []),
      { do: 'state-oversize', oversize },
    ]
  }
  const undersize = {
    journals: group, ...common, ...given('wall_min', row.mateMin), ...given('wall_max', row.mateMax),
    ...(row.withoutGrinding && { without_grinding: true }),
  }
  return [
    ...(isMoved ? [/** @type {Change} */ ({ do: 'drop-undersize', journals: group, size: row.before })] : []),
    { do: 'state-undersize', undersize },
  ]
}

/** Of what an oversize is; of cylinders it is not said. @param {'bores' | 'tappets'} group
 * @returns {{ of?: Oversized }} */
export const ofWhat = (group) => (group === 'tappets' ? { of: 'tappets' } : {})

/** @param {Undersize} row @returns {Row} */
const fromUndersize = ({ size, min = '', max = '', wall_min = '', wall_max = '', without_grinding = false, source }) =>
  ({ before: '', size, min, max, mateMin: wall_min, mateMax: wall_max, withoutGrinding: without_grinding, source })

/** @param {Oversize} row @returns {Row} */
const fromOversize = ({ size, min = '', max = '', piston_min = '', piston_max = '', source }) =>
  ({ before: '', size, min, max, mateMin: piston_min, mateMax: piston_max, withoutGrinding: false, source })
