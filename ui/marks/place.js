// Names of caps and rods as they stand in addresses: `rod-cap.2`.
/** @import { MarkPlace } from '../types/api.d.ts' */

/** @param {MarkPlace} place */
export function placeId(place) {
  const [kind = '', number = 0] = Object.entries(place)[0] ?? []
  return `${kind}.${number}`
}

/** Main cap, rod or rod cap. @param {MarkPlace} place */
export const placeKind = (place) => Object.keys(place)[0] ?? ''

/** The number that such a place usually carries. @param {MarkPlace} place */
export const placeNumber = (place) => String(Object.values(place)[0] ?? '')
