// What is set of the layout, each part of it in a line.
/** @import { Arrangement } from '../types/api.d.ts' */
import { catalogue, termOf } from '../catalogue.js'
import { words } from '../words.js'

const text = words.layout

/** @param {(string | false | undefined)[]} facts */
const joined = (facts) => facts.filter(Boolean).join(', ')

/** @param {string} label */
const lower = (label) => label.charAt(0).toLowerCase() + label.slice(1)

/** @param {Arrangement['layout']} layout */
export const layoutName = (layout) =>
  catalogue().arrangements.find(({ arrangement }) => arrangement.layout === layout)?.name ?? ''

/** @param {Arrangement} arrangement */
export const crankSet = ({ layout, cylinders, mains, thrust_main, rods_per_crankpin }) =>
  joined([
    text.form(layoutName(layout), cylinders),
    text.mainsSet(mains),
    text.thrustSet(thrust_main),
    layout !== 'inline' && text.rodsSet[rods_per_crankpin === 2 ? 2 : 1],
  ])

/** @param {Arrangement} arrangement */
export const valveGearSet = ({ camshaft, cam_bearings, tappets, valves_per_cylinder }) =>
  camshaft === 'none'
    ? lower(text.camshafts.none)
    : joined([
      lower(text.camshafts[camshaft]),
      text.bearingsSet(cam_bearings),
      text.valvesSet(valves_per_cylinder),
      tappets !== 'none' && `${termOf('tappet').plural}: ${lower(text.tappetKinds[tappets])}`,
    ])

/** @param {Arrangement} arrangement */
export const numberingSet = ({ layout, numbering, front }) =>
  joined([
    text.fromSet[numbering.from],
    layout !== 'inline' && lower(text.bankSides[numbering.first_bank]),
    layout !== 'inline' && lower(text.bankOrders[numbering.banks]),
    front === 'flywheel' && text.frontSet,
  ])

/** @param {Arrangement} arrangement */
export function madeSet({ construction = {}, camshaft, oil_from }) {
  const { thrust, cam_bore, bore_wall, cooling, cylinders, ignition, heads } = construction
  const set = joined([
    cooling && text.coolingsSet[cooling],
    ignition && text.ignitionsSet[ignition],
    cylinders && lower(text.cylindersOf[cylinders]),
    bore_wall && text.boreWallsSet[bore_wall],
    thrust && lower(text.thrusts[thrust]),
    camshaft !== 'none' && cam_bore && text.camBoresSet[cam_bore],
    heads && text.headsSet[heads],
    oil_from && text.oilSet[oil_from],
  ])
  return set || lower(text.notKnown)
}
