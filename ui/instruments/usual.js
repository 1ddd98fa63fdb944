// The unit in which the shop works.
/** @import { LengthUnit } from '../types/api.d.ts' */
import { isMetric } from '../lengths.js'
import { state } from '../state.js'

/** @typedef {'inch' | 'millimetre'} ShopUnit */

/** The unit in which the shop works: that of the open job, else of what is on the shelf. @returns {ShopUnit} */
export function shopUnit() {
  const sheet = state.saved?.sheet ?? state.shelf.sheets[0]
  if (sheet) return plainUnit(sheet.head.unit)
  const last = state.shelf.instruments.at(-1)
  return last && isMetric(last.resolution) ? 'millimetre' : 'inch'
}

/** @param {LengthUnit} unit @returns {ShopUnit} */
export const plainUnit = (unit) => (unit === 'millimetre' || unit === 'micrometre' ? 'millimetre' : 'inch')
