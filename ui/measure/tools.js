// What lies on the bench for a kind of quantity, remembered while one walks: the instrument, its unit, what it is set
// to.
/** @import { Instrument, JobView, LengthUnit, Material, PartKind, Quantity } from '../types/api.d.ts' */
import { kindOf } from '../catalogue.js'
import { state } from '../state.js'

/**
 * @typedef {object} Setting
 * @property {string | null} instrument the one chosen; empty for none; null while nobody has chosen
 * @property {boolean} optional the walk takes in the places that may be left out
 * @property {string} setTo what the gauge is set to; empty where it shows the size itself
 * @property {string} over the length over which a bend or twist is read
 * @property {string} celsius how warm the part is; empty for 20 °C
 * @property {Material} material
 */

/** @type {Map<string, Setting>} */
const settings = new Map()
/** The unit in which each instrument is read, where it is not that of the sheet.
 * @type {Map<string, 'inch' | 'millimetre'>} */
const units = new Map()

/** @typedef {{ job: string, kind: PartKind, quantity: Quantity }} Use */

/** @param {Use} use @returns {Setting} */
export const settingOf = (use) =>
  settings.get(keyOf(use)) ?? {
    instrument: null,
    optional: false,
    setTo: '',
    over: '',
    celsius: '',
    material: kindOf(use.kind).material ?? 'cast-iron',
  }

/** @param {Use} use @param {Partial<Setting>} change */
export const set = (use, change) => settings.set(keyOf(use), { ...settingOf(use), ...change })

/** @param {Use} use */
const keyOf = ({ job, kind, quantity }) => `${job} ${kind} ${quantity}`

/** The instruments to choose from: the shop's, and those that only this job knows.
 * @param {JobView} view @returns {Instrument[]} */
export function instrumentsOf(view) {
  const shelf = state.shelf.instruments
  return [...shelf, ...view.instruments.filter(({ id }) => !shelf.some((other) => other.id === id))]
}

/** The instrument in the hand: the one chosen, else the one last used for this quantity of this kind of part, else the
 * one that came along from the kind before. @param {JobView} view @param {Use} use @returns {Instrument | undefined} */
export function instrumentFor(view, use) {
  const chosen =
    settingOf(use).instrument ?? lastUsed(view, use) ?? (use.kind === 'crankpin'
      ? inHand(view, { ...use, kind: 'main-journal' })
      : undefined)
  return instrumentsOf(view).find(({ id }) => id === chosen)
}

/** @param {JobView} view @param {Use} use */
const inHand = (view, use) => settingOf(use).instrument ?? lastUsed(view, use)

/** @param {JobView} view @param {Use} use */
function lastUsed(view, { kind, quantity }) {
  const readings = view.assessment.parts.flatMap((part) => (part.kind === kind ? part.readings : []))
  const used = readings.filter((reading) => reading.quantity === quantity && reading.taken.instrument)
  // What is on its way has no id yet and is the latest.
  const latest = used.find(({ edit }) => !edit) ?? used.reduce(
    (late, one) => (one.edit > (late?.edit ?? '') ? one : late),
    used[0],
  )
  return latest?.taken.instrument
}

/** The unit in which the pad takes a bare number.
 * @param {JobView} view @param {Instrument | undefined} instrument @returns {'inch' | 'millimetre'} */
export const unitOf = (view, instrument) =>
  units.get(`${view.job} ${instrument?.id ?? ''}`) ?? plainUnit(view.sheet.head.unit)

/** @param {JobView} view @param {Instrument | undefined} instrument */
export const turnUnit = (view, instrument) =>
  units.set(`${view.job} ${instrument?.id ?? ''}`, unitOf(view, instrument) === 'inch' ? 'millimetre' : 'inch')

/** @param {LengthUnit} unit */
const plainUnit = (unit) => (unit === 'inch' || unit === 'thou' ? 'inch' : 'millimetre')
