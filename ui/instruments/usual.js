// What instruments of a kind usually achieve (common practice, from the catalogue), in steps that stand on instruments.
/** @import { InstrumentKindEntry, LengthUnit } from '../types/api.d.ts' */
import { isMetric } from '../lengths.js'
import { state } from '../state.js'

/** @typedef {'inch' | 'millimetre'} ShopUnit */

/** @param {InstrumentKindEntry} kind @param {ShopUnit} unit */
export const usual = (kind, unit) => ({
  resolution: stepText(kind.resolution_um, unit),
  uncertainty: stepText(kind.uncertainty_um, unit),
})

/** The unit in which the shop works: that of the open job, else of what is on the shelf. @returns {ShopUnit} */
export function shopUnit() {
  const sheet = state.saved?.sheet ?? state.shelf.sheets[0]
  if (sheet) return plainUnit(sheet.head.unit)
  const last = state.shelf.instruments.at(-1)
  return last && isMetric(last.resolution) ? 'millimetre' : 'inch'
}

/** @param {LengthUnit} unit @returns {ShopUnit} */
export const plainUnit = (unit) => (unit === 'millimetre' || unit === 'micrometre' ? 'millimetre' : 'inch')

/** No inch instrument at the bench reads finer. */
const FINEST_INCH = 0.0001

/** @param {number} micrometres @param {ShopUnit} unit */
function stepText(micrometres, unit) {
  if (unit === 'millimetre') return `${(micrometres / 1000).toFixed(3).replace(/0$/, '')} mm`
  const inches = Math.max(FINEST_INCH, nearestStep(micrometres / 25_400))
  return `${inches.toFixed(4).replace(/(\.\d{3})0$/, '$1')} in`
}

/** The nearest of 1, 2, 5, 10 … @param {number} value */
function nearestStep(value) {
  const decade = 10 ** Math.floor(Math.log10(value))
  const steps = [1, 2, 5, 10].map((step) => step * decade)
  const apart = (/** @type {number} */ step) => Math.abs(Math.log(step / value))
  return steps.reduce((best, step) => (apart(step) < apart(best) ? step : best))
}
