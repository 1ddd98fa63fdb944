// Archives on their way in: chosen on the list of jobs, or opened with this program from outside.
/** @import { Arrival, Imported } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { dropArrival, importArchive, listArrivals, Refusal, sendFile } from '../backend.js'
import { underWay } from '../frame/under-way.js'
import { go, toScreen, toShop } from '../route.js'
import { attempt, redraw, state } from '../state.js'
import { words } from '../words.js'

const text = words.jobs

/** Those of jobs that were put away here, until it is said whether they come back. @type {Arrival[]} */
let put = []
/** One after the other: what comes while others are taken in waits for them. @type {Promise<unknown>} */
let before = Promise.resolve()

/** Asked of one at a time. */
export function askedBack() {
  const [first, ...others] = put
  if (!first) return ''
  const decide = (/** @type {() => unknown} */ then) => {
    put = others
    redraw()
    then()
  }
  return html`
    <section role="alert" class="notice">
      <p>${text.wasPutAway(first.name)}</p>
      <button type="button" class="primary" @click=${() => decide(() => takeBack(first))}>${text.takeBack}</button>
      <button type="button" @click=${() => decide(() => dropArrival(first.arrival))}>${text.leaveAway}</button>
    </section>`
}

/** What was chosen here. @param {File[]} files */
export const openArchives = (files) =>
  takeAll(files.map((file) => ({
    name: file.name,
    taken: () => underWay(async (way, isStopping) => {
      const arrival = await sendFile(file, isStopping)
      return importNow({ arrival, name: file.name }, way, false)
    }),
  })))

/** What another program has opened with this one, at the start or later. */
export const takeArrivals = () =>
  attempt(async () => {
    // Whoever asks while they are taken in would take them twice.
    await before
    const arrivals = await listArrivals()
    const known = put.map(({ arrival }) => arrival)
    await takeAll(arrivals.filter(({ arrival }) => !known.includes(arrival)).map(taking(false)))
  })

/** @param {Arrival} arrival */
const takeBack = (arrival) => takeAll([taking(true)(arrival)])

/** @param {boolean} back @returns {(arrival: Arrival) => Taking} */
const taking = (back) => (arrival) => ({
  name: arrival.name,
  taken: () => underWay((way) => importNow(arrival, way, back)),
})

/** A file that was taken in, or is asked about; nothing when it was stopped.
 * @typedef {{ jobs: string[], told: string } | null} Taken
 * @typedef {{ name: string, taken: () => Promise<Taken> }} Taking */

/** @param {Arrival} arrival @param {number} way @param {boolean} back @returns {Promise<Taken>} */
async function importNow(arrival, way, back) {
  try {
    const taken = await importArchive(arrival.arrival, way, back)
    return { jobs: taken.jobs, told: toldOf(taken) }
  } catch (failure) {
    if (!(failure instanceof Refusal) || failure.code !== 'job-put-away') throw failure
    put = [...put, arrival]
    return { jobs: [], told: '' }
  }
}

/** One after the other; what is refused keeps none of the others out.
 * @param {Taking[]} files */
function takeAll(files) {
  const now = before.then(() => attempt(async () => {
    if (files.length > 0) await arrived(files)
  }))
  before = now
  return now
}

/** @param {Taking[]} files */
async function arrived(files) {
  /** @type {string[]} */
  const jobs = []
  const alerts = []
  for (const { name, taken } of files) {
    try {
      const one = await taken()
      jobs.push(...(one?.jobs ?? []))
      if (one?.told) alerts.push(files.length > 1 ? `${name}: ${one.told}` : one.told)
    } catch (failure) {
      if (!(failure instanceof Refusal)) throw failure
      alerts.push(files.length > 1 ? `${name}: ${failure.message}` : failure.message)
    }
  }
  tell(jobs, alerts.join(' '))
}

/** What was taken in otherwise. @param {Imported} taken */
export const tellTaken = (taken) => tell(taken.jobs, toldOf(taken))

/** What of it needs a person. @param {Imported} taken */
const toldOf = ({ refused, put_away, elsewhere, beside, unread }) =>
  [
    refused.length > 0 ? text.leftOut(refused) : '',
    put_away > 0 ? text.stayedAway(put_away) : '',
    elsewhere > 0 ? text.elsewhere(elsewhere) : '',
    beside.length > 0 ? text.beside(beside) : '',
    ...unread,
  ].filter(Boolean).join(' ')

/** One job is opened; of several, and of none, the list is. @param {string[]} jobs @param {string} alert */
function tell(jobs, alert) {
  const [job] = jobs
  // What was stopped has said so.
  const notice = jobs.length > 1 ? text.takenIn(jobs.length) : state.notice
  const to = jobs.length === 1 && job && put.length === 0 ? toScreen(job, 'plan') : toShop('jobs')
  state.onArrival = { alert, notice }
  if (location.hash !== to) go(to)
  // The list is read anew.
  else dispatchEvent(new Event('hashchange'))
}
