// What a line of the sheet is about, as it stands in an address.
/** @import { JobView, LineKey, PartKind, Quantity } from '../types/api.d.ts' */
import { quantityOf } from '../catalogue.js'

/** @param {LineKey} of */
export const lineId = ({ kind, quantity, station, port, numbers, name }) =>
  ['line', kind, quantity, station, port, numbers?.join('-'), name].join('.')

/** A line with its words, as far as the sheet has it. @param {JobView} view @param {string} id */
export const lineOf = ({ sheet, sheet_words }, id) => {
  const nth = sheet.lines.findIndex(({ of }) => lineId(of) === id)
  const [line, words] = [sheet.lines[nth], sheet_words.lines[nth]]
  return line && words && { line, words }
}

/** Where a new line is entered, about this if given. @param {PartKind} [kind] @param {Quantity} [quantity] */
export const newLine = (kind, quantity) => ['new', kind, quantity].filter(Boolean).join('.')

/** The stations at which a quantity has limits of its own: the rings of a piston differ, the ends of a journal do not.
 * @param {PartKind} kind @param {Quantity} quantity */
export const ringsOf = (kind, quantity) =>
  quantityOf(kind, quantity).spots.filter(({ spot }) => spot.station?.endsWith('ring'))
