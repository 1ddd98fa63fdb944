// What lies on the bench of a job for a kind of quantity, remembered while one walks: the instrument, its unit, what it
// is set to.
/** @import { Instrument, JobView, LengthUnit, Material, PartKind, Quantity } from '../types/api.d.ts' */
import { kindOf } from '../catalogue.js'
import { formOf } from '../controls/form.js'
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

/**
 * @typedef {object} OnBench
 * @property {Record<string, Setting>} settings
 * @property {Record<string, 'inch' | 'millimetre'>} units in which each instrument is read, where it is not that of the
 * sheet
 * @property {string} name the quantity of the manual's own that is measured
 */

/** @param {string} job */
const onBench = (job) =>
  formOf(`bench ${job}`, () => /** @type {OnBench} */ ({ settings: {}, units: {}, name: '' }))

/** @typedef {{ job: string, kind: PartKind, quantity: Quantity }} Use */

/** @param {string} job */
export const nameOn = (job) => onBench(job).entered.name
/** @param {string} job @param {string} name */
export const nameIt = (job, name) => onBench(job).enter({ name })

/** @param {Use} use @returns {Setting} */
export const settingOf = (use) =>
  onBench(use.job).entered.settings[keyOf(use)] ?? {
    instrument: null,
    optional: false,
    setTo: '',
    over: '',
    celsius: '',
    material: kindOf(use.kind).material ?? 'cast-iron',
  }

/** @param {Use} use @param {Partial<Setting>} change */
export function set(use, change) {
  const { entered: { settings }, enter } = onBench(use.job)
  enter({ settings: { ...settings, [keyOf(use)]: { ...settingOf(use), ...change } } })
}

/** What was set before the page was ended, and alters what is read: it may no longer be so. @param {Use} use */
export function foundSetting(use) {
  const { isFound, entered: { settings }, enter } = onBench(use.job)
  const { setTo, over, celsius } = settingOf(use)
  const { [keyOf(use)]: _, ...others } = settings
  return { isFound: isFound && Boolean(setTo || over || celsius), forget: () => enter({ settings: others }) }
}

/** @param {Use} use */
const keyOf = ({ kind, quantity }) => `${kind} ${quantity}`

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
  onBench(view.job).entered.units[instrument?.id ?? ''] ?? plainUnit(view.sheet.head.unit)

/** @param {JobView} view @param {Instrument | undefined} instrument */
export function turnUnit(view, instrument) {
  const { entered: { units }, enter } = onBench(view.job)
  enter({ units: { ...units, [instrument?.id ?? '']: unitOf(view, instrument) === 'inch' ? 'millimetre' : 'inch' } })
}

/** @param {LengthUnit} unit */
const plainUnit = (unit) => (unit === 'inch' || unit === 'thou' ? 'inch' : 'millimetre')
