// Lengths as people type them: a bare number is in the unit of the spec sheet, and a manual's second column in the other.
/** @import { LengthUnit } from './types/api.d.ts' */

/** How each unit is written. @type {Record<LengthUnit, string>} */
export const UNIT_MARKS = { inch: 'in', millimetre: 'mm', micrometre: 'µm', thou: 'thou' }

/** The typed text with its unit, for the core to read and judge. @param {string} typed @param {LengthUnit} unit */
export function withUnit(typed, unit) {
  const [first = '', ...rest] = typed.split('=')
  const own = marked(first, unit)
  if (rest.length === 0) return own
  return `${own} = ${marked(rest.join('='), isMetric(own) ? 'inch' : 'millimetre')}`
}

/** @param {string} column @param {LengthUnit} unit */
function marked(column, unit) {
  const text = column.trim()
  return /^[+\-−]?[\d.,\s]+$/.test(text) ? `${text} ${UNIT_MARKS[unit]}` : text
}

/** @param {string} text */
const isMetric = (text) => /[mµμ]m\s*$/i.test(text)
