// The letters by which the places of a cause are found on the plan.
/** @import { CauseView, PlaceView } from '../types/api.d.ts' */

/** A for the likeliest; a place of which nothing was looked at has no part on the plan, and so no letter.
 * @param {CauseView} cause @returns {Map<PlaceView, string>} */
export function letters({ places }) {
  const onPlan = places.filter(({ parts }) => parts.length > 0)
  return new Map(onPlan.map((place, nth) => [place, String.fromCharCode(65 + nth)]))
}
