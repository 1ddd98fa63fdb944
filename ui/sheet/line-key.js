// What a line of the sheet is about: as it stands in an address, and in words.
/** @import { LineKey, PartKind, Quantity, Sheet } from '../types/api.d.ts' */
import { kindOf, quantityOf } from '../catalogue.js'
import { words } from '../words.js'

/** @param {LineKey} of */
export const lineId = ({ kind, quantity, station, port, numbers, name }) =>
  ['line', kind, quantity, station, port, numbers?.join('-'), name].join('.')

/** @param {Sheet} sheet @param {string} id */
export const lineOf = (sheet, id) => sheet.lines.find(({ of }) => lineId(of) === id)

/** Where a new line is entered, about this if given. @param {PartKind} [kind] @param {Quantity} [quantity] */
export const newLine = (kind, quantity) => ['new', kind, quantity].filter(Boolean).join('.')

/** What it is about besides the kind of part: "ring gap, top ring". @param {LineKey} of */
export function aspect({ kind, quantity, name, station, port, numbers = [] }) {
  const entry = quantityOf(kind, quantity)
  return [
    quantity === 'other' ? name : entry.words,
    station && stationWords(kind, quantity, station),
    port && words.sheet.ports[port],
    numbers.length > 0 && words.sheet.numbered(numbers.join(', ')),
  ].filter(Boolean).join(', ')
}

/** @param {LineKey} of */
export const label = (of) => `${kindOf(of.kind).name}, ${aspect(of)}`

/** The stations at which a quantity has limits of its own: the rings of a piston differ, the ends of a journal do not.
 * @param {PartKind} kind @param {Quantity} quantity */
export const ringsOf = (kind, quantity) =>
  quantityOf(kind, quantity).spots.filter(({ spot }) => spot.station?.endsWith('ring'))

/** @param {PartKind} kind @param {Quantity} quantity @param {string} station */
const stationWords = (kind, quantity, station) =>
  quantityOf(kind, quantity).spots.find(({ spot }) => spot.station === station)?.label ?? station
