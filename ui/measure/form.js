// The form of a round part as numbers to draw: how far each place lies from a middle size, and how often that is
// enlarged.
/** @import { PartView, Phase, Quantity, ReadingView, Station } from '../types/api.d.ts' */
import { quantityOf } from '../catalogue.js'
import { isOf } from './walk.js'

/**
 * @typedef {object} Form
 * @property {boolean} isInside a bore: wear makes it larger
 * @property {Station[]} stations along the part, as far as they were read
 * @property {(station: Station | undefined, direction: 'a' | 'b') => number | undefined} at the diameter in nanometres
 * @property {number} middle the size that is drawn in its own place, in nanometres
 * @property {ReadingView} worst the place most worn
 * @property {[number | null, number | null]} allowed
 * @property {[number | null, number | null]} fresh a new part
 * @property {number} times how often deviations are enlarged beside the part itself
 */

/** In the order of the drawing: a shaft lies, a bore stands. @type {Station[]} */
const STATIONS = ['front', 'top', 'middle', 'rear', 'bottom']
const NICE = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000]

/** The form of a part from its diameters; none before two places of it are read.
 * @param {PartView} part @param {Quantity} quantity @param {Phase} phase
 * @param {number} radius how large the part's radius is drawn @param {number} room how far a deviation may reach, on
 * the radius
 * @returns {Form | null} */
export function formOf(part, quantity, phase, radius, room) {
  const what = part.kind === 'rod' ? 'big-end-bore' : 'diameter'
  if (quantity !== what && !['out-of-round', 'taper', 'clearance', 'scratch-depth'].includes(quantity)) return null
  // What is still on its way has no length yet.
  const isKnown = (/** @type {ReadingView} */ reading) => reading.stands && reading.edit && reading.spot.direction
  const readings =
    part.readings.filter((reading) => isKnown(reading) && isOf(reading, { quantity: what, name: '' }, phase))
  const [first] = readings
  if (!first || readings.length < 2) return null
  // What is measured from outside wears smaller.
  const isInside = !quantityOf(part.kind, what).wears_smaller
  const worst = readings.reduce(
    (far, one) => ((isInside ? one.length > far.length : one.length < far.length) ? one : far),
    first,
  )
  const figure = part.figures.find((one) => one.quantity === what && one.phase === phase)
  const allowed = figure?.allowed ?? [null, null]
  const fresh = figure?.new ?? [null, null]
  const lengths = readings.map(({ length }) => length)
  const known = [...lengths, ...near([...allowed, ...fresh], lengths)]
  const [low, high] = [Math.min(...known), Math.max(...known)]
  const middle = (low + high) / 2
  return {
    isInside,
    stations: STATIONS.filter((station) => readings.some(({ spot }) => spot.station === station)),
    at: (station, direction) =>
      readings.find(({ spot }) => spot.station === station && spot.direction === direction)?.length,
    middle,
    worst,
    allowed: [drawable(allowed[0], low, high), drawable(allowed[1], low, high)],
    fresh: [drawable(fresh[0], low, high), drawable(fresh[1], low, high)],
    times: timesFor((high - low) / 2, middle, radius, room),
  }
}

/** Limits far away would flatten the form: they are left out.
 * @param {(number | null)[]} limits @param {number[]} lengths */
function near(limits, lengths) {
  const [low, high] = [Math.min(...lengths), Math.max(...lengths)]
  const reach = Math.max(4 * (high - low), 0.0015 * high)
  return limits.filter((limit) => limit !== null).filter((limit) => limit > low - reach && limit < high + reach)
}

/** @param {number | null} limit @param {number} low @param {number} high */
const drawable = (limit, low, high) => (limit !== null && limit >= low && limit <= high ? limit : null)

/** The largest round enlargement that fits. Half a difference of diameters moves each side.
 * @param {number} deviation on the diameter @param {number} size @param {number} radius @param {number} room */
function timesFor(deviation, size, radius, room) {
  const scale = radius / (size / 2)
  const fits = NICE.filter((times) => (deviation / 2) * scale * times <= room)
  return fits.at(-1) ?? 10
}

/** How far a diameter is drawn from its middle size, on the radius.
 * @param {Form} form @param {number} length @param {number} radius */
export const drawnOff = ({ middle, times }, length, radius) => ((length - middle) / 2) * (radius / (middle / 2)) * times
