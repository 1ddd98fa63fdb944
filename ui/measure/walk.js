// The places of a walk in the order of a hand with a micrometer: place by place over a part, then to the next of its
// kind in strip-down order, and from the mains on to the crankpins.
/** @import { JobView, PartKind, PartView, Phase, Quantity, ReadingView, Spot } from '../types/api.d.ts' */
import { kindOf, quantityOf } from '../catalogue.js'

/**
 * @typedef {object} Step a place at which something is read
 * @property {string} id tells it from every other
 * @property {PartView} part
 * @property {Quantity} quantity
 * @property {string} words the quantity in words
 * @property {string} name of a quantity of the manual's own; else empty
 * @property {Spot} spot
 * @property {string} label the spot in words; empty for the only one
 * @property {string} station the station in words; empty where there is none
 * @property {boolean} needed the set is incomplete without it
 */

/** All places of the walk to which a part and a quantity belong.
 * @param {JobView} view @param {PartView} part @param {Quantity} quantity @param {string} name @returns {Step[]} */
export function walkOf(view, part, quantity, name) {
  const { walked_with } = kindOf(part.kind)
  const chain = walked_with.length > 0 ? walked_with : [part.kind]
  const kinds = chain.filter((kind) => kind === part.kind || hasRead(kind, quantity))
  const { read_with } = quantityOf(part.kind, quantity)
  const quantities = read_with.length > 0 ? read_with : [quantity]
  return kinds.flatMap((kind) =>
    view.assessment.parts
      .filter((one) => one.kind === kind)
      .flatMap((one) => quantities.flatMap((each) => stepsOf(one, each, name))))
}

/** What a person reads off an instrument on a part of this kind. @param {PartKind} kind */
export const readQuantities = (kind) => kindOf(kind).quantities.filter((entry) => entry.is_read)

/** @param {PartKind} kind @param {string} quantity */
export const hasRead = (kind, quantity) => readQuantities(kind).some((entry) => entry.id === quantity)

/** The places at which a quantity is read on one part.
 * @param {PartView} part @param {Quantity} quantity @param {string} name @returns {Step[]} */
export function stepsOf(part, quantity, name) {
  const entry = readQuantities(part.kind).find(({ id }) => id === quantity)
  if (!entry) return []
  const own = quantity === 'other' ? name : ''
  return entry.spots.map(({ spot, label, station, needed }) => ({
    id: `${part.part} ${quantity} ${own} ${spotId(spot)}`,
    part,
    quantity,
    words: own || entry.words,
    name: own,
    spot,
    label,
    station,
    needed,
  }))
}

/** @param {Spot} spot */
const spotId = ({ station, direction }) => `${station ?? ''} ${direction ?? ''}`

/** All that was read at a place in a phase, in the order in which it was read.
 * @param {Step} step @param {Phase} phase */
export const readingsAt = (step, phase) =>
  step.part.readings.filter((reading) => isOf(reading, step, phase) && spotId(reading.spot) === spotId(step.spot))

/** @param {ReadingView} reading @param {{ quantity: Quantity, name: string }} what @param {Phase} phase */
export const isOf = (reading, { quantity, name }, phase) =>
  reading.quantity === quantity && reading.phase === phase && reading.name.trim() === name.trim()

/** The reading that counts at a place. @param {Step} step @param {Phase} phase */
export const standingAt = (step, phase) => readingsAt(step, phase).filter(({ stands }) => stands).at(-1)

/** Where the hand goes after a place. After a place that had a reading already: on to its neighbour, since somebody is
 * measuring anew; after any other: on to the next that has none. Nowhere when the walk is done.
 * @param {Step[]} steps @param {string} id @param {boolean} wasRead @param {Phase} phase @returns {Step | undefined} */
export function after(steps, id, wasRead, phase) {
  const rest = steps.slice(steps.findIndex((step) => step.id === id) + 1)
  return wasRead ? rest[0] : rest.find((step) => !standingAt(step, phase))
}

/** Places still without a reading, part by part; parts at which nobody has begun are left out unless the walk is there.
 * @param {Step[]} steps @param {Phase} phase @param {string} here @returns {{ part: PartView, steps: Step[] }[]} */
export function missing(steps, phase, here) {
  /** @type {Map<string, Step[]>} */
  const byPart = new Map()
  for (const step of steps) byPart.set(step.part.part, [...(byPart.get(step.part.part) ?? []), step])
  return [...byPart.values()].flatMap((set) => {
    const [first] = set
    if (!first) return []
    const open = set.filter((step) => step.needed && !standingAt(step, phase))
    const isBegun = open.length < set.filter((step) => step.needed).length || first.part.part === here
    return open.length > 0 && isBegun ? [{ part: first.part, steps: open }] : []
  })
}
