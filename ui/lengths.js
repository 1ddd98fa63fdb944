// Lengths as people type them: a bare number is in the unit of the spec sheet, and a manual's second column in the
// other.
/** @import { LengthUnit } from './types/api.d.ts' */

/** How each unit is written. @type {Record<LengthUnit, string>} */
export const UNIT_MARKS = { inch: 'in', millimetre: 'mm', micrometre: 'µm', thou: 'thou' }

/** The typed text with its unit, for the core to read and judge: `2.998 = 76.149` becomes `2.998 in = 76.149 mm`.
 * @param {string} typed @param {LengthUnit} unit */
export function withUnit(typed, unit) {
  const [, first = '', other, bracketed] = /^([^=(]*)(?:=(.*)|\((.*)\)\s*)?$/.exec(typed) ?? ['', typed]
  const second = other ?? bracketed
  const own = marked(first, unit)
  return second === undefined ? own : `${own} = ${marked(second, isMetric(own) ? 'inch' : 'millimetre')}`
}

/** A computed length for show: ten-thousandths of an inch or thousandths of a millimetre.
 * @param {number} nanometres @param {LengthUnit} unit */
export function shown(nanometres, unit) {
  const isInch = unit === 'inch' || unit === 'thou'
  const [step, decimals] = isInch ? [2540, 4] : [1000, 3]
  // Whole steps first, so that nothing is rounded twice.
  const number = (Math.round(Math.abs(nanometres) / step) / 10 ** decimals).toFixed(decimals)
  return `${nanometres < 0 ? '−' : ''}${number} ${isInch ? 'in' : 'mm'}`
}

/** Keeps numbers and their units on one line. @param {string} text */
export const tied = (text) => text.replace(/(\d) (in|mm|µm|thou)\b/g, '$1\u00a0$2')

/** Whether it looks like a length, or like two columns of one; an empty field is no fault. The core is the judge.
 * @param {string} typed */
export const isLength = (typed) => typed.trim() === '' || COLUMNS.test(typed.trim())

/** Whether a length is written in a metric unit. @param {string} text */
export const isMetric = (text) => /[mµμ]m\s*$/i.test(text)

const COLUMN = '[+\\-−]?(\\d+([.,]\\d*)?|[.,]\\d+)\\s*(mm|um|µm|μm|in|inch|"|″|”|thou|thousandths)?'
const COLUMNS = new RegExp(`^${COLUMN}\\s*(=\\s*${COLUMN}|\\(\\s*${COLUMN}\\s*\\))?$`, 'i')

/** @param {string} column @param {LengthUnit} unit */
function marked(column, unit) {
  const text = column.trim()
  return /^[+\-−]?[\d.,]+$/.test(text) ? `${text} ${UNIT_MARKS[unit]}` : text
}
