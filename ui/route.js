// Where the person is: the address after the #. Real history entries, so that Back works on every system.

/**
 * @typedef {'jobs' | 'instruments' | 'prices' | 'rules' | 'label' | 'backup' | 'settings'} ShopScreen
 * @typedef {'intake' | 'marks' | 'plan' | 'part' | 'camera' | 'measure' | 'sheet' | 'sizing' | 'causes' | 'decisions'
 *   | 'lists' | 'costs' | 'approval' | 'labels' | 'hand-over' | 'history'} JobScreen
 * @typedef {ShopScreen | JobScreen} ScreenName as its folder is called
 *
 * @typedef {object} Route
 * @property {ScreenName} screen
 * @property {string} job empty outside a job
 * @property {string} subject of several things that a screen can show, the one: a cap, a cause, a line of the spec
 * sheet
 * @property {string} part the part on the part screen or under the micrometer
 * @property {string} quantity what is measured; empty for what the part has first
 * @property {string} phase when in the rebuild; empty for as found
 * @property {boolean} isLook the part was opened to take the next look
 * @property {string} zone the field to look at
 * @property {string} tag the tag whose fields are to be marked
 * @property {string} cause the cause from whose evidence the part was opened
 * @property {string} photo the photo that is enlarged
 * @property {string} beside the photo that stands beside it, or what stands in its place: see `CHOOSING` and `SAVING`
 * @property {boolean} isRetake the photo beside it was taken in its place
 */

const NOWHERE = {
  job: '', subject: '', part: '', quantity: '', phase: '', isLook: false, zone: '', tag: '', cause: '', photo: '',
  beside: '', isRetake: false,
}

/** Whether there is such a screen, the frame knows. @param {string} hash @returns {Route} */
export function readRoute(hash) {
  const [first = '', ...steps] = hash.replace(/^#\/?/, '').split('/').map(decoded)
  const screen = (/** @type {string} */ name) => /** @type {ScreenName} */ (name)
  if (first !== 'job') return { ...NOWHERE, screen: screen(first), subject: steps[0] ?? '' }
  const [job = '', name = 'plan', subject = '', fourth = '', fifth = '', sixth = '', last = ''] = steps
  if (!/^[0-9a-f]{32}$/.test(job)) return { ...NOWHERE, screen: 'jobs' }
  if (name === 'measure') return { ...NOWHERE, screen: name, job, part: subject, quantity: fourth, phase: fifth }
  if (name !== 'part') return { ...NOWHERE, screen: screen(name), job, subject }
  const part = { ...NOWHERE, screen: screen(name), job, part: subject }
  if (fourth === 'look') return { ...part, isLook: true, zone: fifth, tag: sixth }
  if (fourth === 'cause') return { ...part, cause: fifth }
  return { ...part, photo: fifth, beside: sixth, isRetake: last === 'retake' }
}

/** @param {string} step */
function decoded(step) {
  try {
    return decodeURIComponent(step)
  } catch {
    return ''
  }
}

/** @param {string} job @param {JobScreen} screen @param {string} [subject] */
export const toScreen = (job, screen, subject) => `#/job/${job}/${screen}${subject ? `/${subject}` : ''}`
/** @param {string} job @param {string} part */
export const toPart = (job, part) => `#/job/${job}/part/${part}`
/** The part, with the way back to the cause for or against which it speaks.
 * @param {string} job @param {string} part @param {string} cause */
export const toWitness = (job, part, cause) => `${toPart(job, part)}/cause/${encodeURIComponent(cause)}`
/** The part, with what to look at on it.
 * @param {string} job @param {{ part: string, zone: string | null, tag: string | null }} look */
export const toLook = (job, { part, zone, tag }) =>
  [`${toPart(job, part)}/look`, zone ?? '', tag ?? ''].join('/').replace(/\/+$/, '')
/** @param {string} job @param {string} part @param {string} photo */
export const toPhoto = (job, part, photo) => `${toPart(job, part)}/photo/${encodeURIComponent(photo)}`
/** Beside a photo, while another is chosen to stand there. */
export const CHOOSING = 'choose'
/** Beside a photo, while the one that was taken in its place is being saved. */
export const SAVING = 'saving'
/** A photo with another beside it.
 * @param {string} job @param {string} part @param {string} photo @param {string} beside @param {boolean} [isRetake] */
export const toPair = (job, part, photo, beside, isRetake) =>
  `${toPhoto(job, part, photo)}/${encodeURIComponent(beside)}${isRetake ? '/retake' : ''}`
/** @param {string} job @param {string} part @param {string} [quantity] @param {string} [phase] as found, if not said */
export const toMeasure = (job, part, quantity, phase) =>
  `#/job/${job}/measure/${part}${quantity ? `/${quantity}${phase && phase !== 'found' ? `/${phase}` : ''}` : ''}`
/** @param {ShopScreen} screen */
export const toShop = (screen) => `#/${screen}`
/** @param {string} [id] an instrument, or `new` */
export const toInstruments = (id) => `${toShop('instruments')}${id ? `/${encodeURIComponent(id)}` : ''}`

/** Goes there in place of this screen: Back does not return to a form that is done. @param {string} address */
export function swap(address) {
  const before = location.href
  try {
    history.replaceState(null, '', address)
  } catch {
    // So often in so short a time no browser lets the address be changed this way, which is the quicker one.
    return location.replace(address)
  }
  if (location.href !== before) dispatchEvent(new HashChangeEvent('hashchange'))
}

/** For the links of a walk, which goes on in place of the screen: Back leads to where the walk was begun. Opened
 * beside, with a key held, it is a link like any other. @param {MouseEvent} event @param {string} [address] its own, if
 * not said */
export function walkOn(event, address = /** @type {HTMLAnchorElement} */ (event.currentTarget).href) {
  if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return
  event.preventDefault()
  swap(address)
}

/** Goes there, with a history entry. @param {string} address */
export const go = (address) => {
  location.hash = address
}
