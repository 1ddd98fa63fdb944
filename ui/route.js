// Where the person is: the address after the #. Real history entries, so that Back works on every system.

/**
 * @typedef {'jobs' | 'instruments' | 'settings' | 'intake' | 'marks' | 'plan' | 'limits' | 'sizes' | 'part' | 'causes' | 'decisions' | 'hand-over' | 'history'} Screen
 * @typedef {object} Route
 * @property {Screen} screen
 * @property {string} job empty outside a job
 * @property {string} part the part on the part screen
 * @property {string} photo the photo that is enlarged
 * @property {string} place the cap or rod on the marks screen, the line or series on the spec sheet, the instrument among instruments
 */

/** The sheets of a job, in the order of the work. @type {Screen[]} */
export const SHEETS = ['intake', 'marks', 'plan', 'limits', 'sizes', 'causes', 'decisions', 'hand-over', 'history']

/** @param {string} hash @returns {Route} */
export function readRoute(hash) {
  const steps = hash.replace(/^#\/?/, '').split('/').map(decoded)
  const nowhere = { job: '', part: '', photo: '', place: '' }
  if (steps[0] === 'settings') return { ...nowhere, screen: 'settings' }
  if (steps[0] === 'instruments') return { ...nowhere, screen: 'instruments', place: steps[1] ?? '' }
  const [, job = '', screen = 'plan', subject = '', , photo = ''] = steps
  if (steps[0] !== 'job' || !/^[0-9a-f]{32}$/.test(job)) return { ...nowhere, screen: 'jobs' }
  if (screen === 'part' && subject) return { ...nowhere, screen, job, part: subject, photo }
  const sheet = SHEETS.find((name) => name === screen) ?? 'plan'
  return { ...nowhere, screen: sheet, job, place: sheet === 'marks' || sheet === 'limits' ? subject : '' }
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
/** @param {string} job @param {string} part @param {string} photo */
export const toPhoto = (job, part, photo) => `${toPart(job, part)}/photo/${encodeURIComponent(photo)}`
export const toJobs = '#/jobs'
export const toSettings = '#/settings'
/** @param {string} [id] an instrument, or `new` */
export const toInstruments = (id) => `#/instruments${id ? `/${encodeURIComponent(id)}` : ''}`

/** Goes there, with a history entry. @param {string} address */
export const go = (address) => {
  location.hash = address
}
