// Where the person is: the address after the #. Real history entries, so that Back works on every system.

/**
 * @typedef {'jobs' | 'instruments' | 'prices' | 'rules' | 'settings' | 'intake' | 'marks' | 'plan' | 'limits' | 'sizes' | 'part' | 'measure' | 'causes' | 'decisions' | 'lists' | 'costs' | 'approval' | 'hand-over' | 'history'} Screen
 * @typedef {object} Route
 * @property {Screen} screen
 * @property {string} job empty outside a job
 * @property {string} part the part on the part screen or under the micrometer
 * @property {string} quantity what is measured; empty for what the part has first
 * @property {string} phase when in the rebuild; empty for as found
 * @property {boolean} isLook the part was opened to take the next look
 * @property {string} zone the field to look at
 * @property {string} tag the tag whose fields are to be marked
 * @property {string} cause the cause from whose evidence the part was opened
 * @property {string} photo the photo that is enlarged
 * @property {string} place the cap or rod on the marks screen, the open cause, the line or series on the spec sheet, the instrument among instruments, the list among lists
 */

/** The sheets of a job, in the order of the work. @type {Screen[]} */
export const SHEETS = ['intake', 'marks', 'plan', 'limits', 'sizes', 'causes', 'decisions', 'lists', 'costs', 'hand-over', 'history']

/** Sheets that show one of several things. @type {Screen[]} */
const WITH_SUBJECT = ['marks', 'limits', 'causes', 'lists']

/** @param {string} hash @returns {Route} */
export function readRoute(hash) {
  const steps = hash.replace(/^#\/?/, '').split('/').map(decoded)
  const nowhere = { job: '', part: '', quantity: '', phase: '', isLook: false, zone: '', tag: '', cause: '', photo: '', place: '' }
  if (steps[0] === 'settings') return { ...nowhere, screen: 'settings' }
  if (steps[0] === 'prices' || steps[0] === 'rules') return { ...nowhere, screen: steps[0] }
  if (steps[0] === 'instruments') return { ...nowhere, screen: 'instruments', place: steps[1] ?? '' }
  const [, job = '', screen = 'plan', subject = '', fourth = '', fifth = '', sixth = ''] = steps
  if (steps[0] !== 'job' || !/^[0-9a-f]{32}$/.test(job)) return { ...nowhere, screen: 'jobs' }
  if (screen === 'part' && subject && fourth === 'look') return { ...nowhere, screen, job, part: subject, isLook: true, zone: fifth, tag: sixth }
  if (screen === 'part' && subject && fourth === 'cause') return { ...nowhere, screen, job, part: subject, cause: fifth }
  if (screen === 'part' && subject) return { ...nowhere, screen, job, part: subject, photo: fifth }
  if (screen === 'measure' && subject) return { ...nowhere, screen, job, part: subject, quantity: fourth, phase: fifth }
  if (screen === 'approval') return { ...nowhere, screen, job }
  const sheet = SHEETS.find((name) => name === screen) ?? 'plan'
  return { ...nowhere, screen: sheet, job, place: WITH_SUBJECT.includes(sheet) ? subject : '' }
}

/** @param {string} step */
function decoded(step) {
  try {
    return decodeURIComponent(step)
  } catch {
    return ''
  }
}

/** @param {string} job @param {Screen} screen @param {string} [subject] */
export const toSheet = (job, screen, subject) => `#/job/${job}/${screen}${subject ? `/${subject}` : ''}`
/** @param {string} job @param {string} part */
export const toPart = (job, part) => `#/job/${job}/part/${part}`
/** The part, with the way back to the cause for or against which it speaks. @param {string} job @param {string} part @param {string} cause */
export const toWitness = (job, part, cause) => `${toPart(job, part)}/cause/${encodeURIComponent(cause)}`
/** The part, with what to look at on it. @param {string} job @param {{ part: string, zone: string | null, tag: string | null }} look */
export const toLook = (job, { part, zone, tag }) => [`${toPart(job, part)}/look`, zone ?? '', tag ?? ''].join('/').replace(/\/+$/, '')
/** @param {string} job @param {string} part @param {string} photo */
export const toPhoto = (job, part, photo) => `${toPart(job, part)}/photo/${encodeURIComponent(photo)}`
/** @param {string} job @param {string} part @param {string} [quantity] @param {string} [phase] as found, if not said */
export const toMeasure = (job, part, quantity, phase) =>
  `#/job/${job}/measure/${part}${quantity ? `/${quantity}${phase && phase !== 'found' ? `/${phase}` : ''}` : ''}`
export const toJobs = '#/jobs'
export const toSettings = '#/settings'
export const toPrices = '#/prices'
export const toRules = '#/rules'
/** @param {string} [id] an instrument, or `new` */
export const toInstruments = (id) => `#/instruments${id ? `/${encodeURIComponent(id)}` : ''}`

/** Goes there in place of this screen: Back does not return to a form that is done. @param {string} address */
export const swap = (address) => location.replace(address)

/** Goes there, with a history entry. @param {string} address */
export const go = (address) => {
  location.hash = address
}
