// What usually follows from a figure of the arrangement, so that an ordinary engine takes a few taps. Whatever the
// person has set stays as set. The usual figures are common practice.
/** @import { Arrangement, Catalogue } from '../types/api.d.ts' */

/** @param {Catalogue} catalogue @param {Arrangement['layout']} layout @returns {Arrangement} */
export function startOf(catalogue, layout) {
  const start = catalogue.arrangements.find(({ arrangement }) => arrangement.layout === layout)
  if (!start) throw new Error(`The catalogue has no start for “${layout}”.`)
  return start.arrangement
}

/** @param {Arrangement} entered @param {keyof Arrangement} changed @param {(keyof Arrangement)[]} touched
 * @returns {Arrangement} */
export function derived(entered, changed, touched) {
  const next = { ...entered }
  if (changed === 'camshaft') followCamshaft(next)
  if (changed === 'cylinders' || changed === 'rods_per_crankpin') {
    const crankpins = Math.floor(next.cylinders / Math.max(1, next.rods_per_crankpin))
    if (!touched.includes('mains')) next.mains = mainsOf(next, crankpins)
  }
  if (!touched.includes('thrust_main')) next.thrust_main = thrustOf(next)
  const hasCam = next.camshaft !== 'none'
  if (hasCam && changed !== 'cam_bearings' && !touched.includes('cam_bearings')) next.cam_bearings =
    Math.max(2, next.mains)
  return next
}

/** A main on each side of every crankpin; in a flat engine on each side of every pair.
 * @param {Arrangement} arrangement @param {number} crankpins */
const mainsOf = ({ layout, cylinders }, crankpins) => (layout === 'flat' ? Math.floor(cylinders / 2) : crankpins) + 1

/** The middle main, or the last of a flat engine. @param {Arrangement} arrangement */
const thrustOf = ({ layout, mains }) => (layout === 'flat' ? mains : Math.ceil(mains / 2))

/** Without a camshaft there are no valves; with one there are at least two. @param {Arrangement} next */
function followCamshaft(next) {
  if (next.camshaft === 'none') {
    Object.assign(next, { cam_bearings: 0, tappets: 'none', valves_per_cylinder: 0 })
    return
  }
  if (next.valves_per_cylinder === 0) next.valves_per_cylinder = 2
  if (next.cam_bearings === 0) next.cam_bearings = Math.max(2, next.mains)
  if (next.camshaft.startsWith('in-block') && next.tappets === 'none') next.tappets = 'flat-solid'
}
