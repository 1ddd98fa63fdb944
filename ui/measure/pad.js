// What is being typed and the place it goes to. A value is taken on the spot: the hand goes on while it is still on its
// way to the store, so that no key of a fast micrometer is lost or lands at another place.
/** @import { JobView, PartView, Phase, Quantity, Reading, Spot } from '../types/api.d.ts' */
/** @import { Step } from './walk.js' */
import { catalogue } from '../catalogue.js'
import { formOf } from '../controls/form.js'
import { submit } from '../edits/queue.js'
import { feelTick } from '../phone.js'
import { readdress } from '../readdress.js'
import { toMeasure } from '../route.js'
import { redraw, shownJob, state } from '../state.js'
import { words } from '../words.js'
import { isGone } from './before-apart.js'
import { parted } from './entry.js'
import { readingOf, whatToSetUp, whyNot } from './reading.js'
import { nameOn, settingOf } from './tools.js'
import { after, readQuantities, standingAt, walkOf } from './walk.js'

const text = words.measure

/**
 * @typedef {object} Bench
 * @property {JobView} view
 * @property {PartView} part
 * @property {Quantity} quantity
 * @property {Phase} phase
 * @property {Step[]} steps every place of the walk
 * @property {Step | undefined} step where the micrometer goes now; nowhere when the walk is done
 *
 * @typedef {object} Refused a value that the store would not take
 * @property {string} part
 * @property {Quantity} quantity
 * @property {string} name
 * @property {Spot} spot
 * @property {string} value
 * @property {string} why
 */

const pad = {
  /** The address for which what follows holds. @type {typeof state.route | null} */
  route: null,
  typed: '',
  /** Why what was typed is not taken. */
  refusal: '',
  /** The place and its phase; empty where the first open place is meant. */
  at: '',
  /** The part at which the walk ended. */
  doneAt: '',
  /** The place to go back to after one that is measured again. */
  back: '',
  /** Where the high spot of a run-out stands. */
  angle: '',
  /** What was taken last and what comes next, for those who listen. */
  said: '',
  /** What is measured, and with what, is unfolded to be changed; null until the person has said. */
  isSettingUp: /** @type {boolean | null} */ (null),
  takenAt: 0,
}

/** A number half typed, and where it goes. @param {string} job */
const half = (job) => formOf(`reading ${job}`, () => ({ at: '', typed: '', place: '', back: '', angle: '' }))

/** The values that the store refused. @param {string} job */
const refusedOf = (job) => formOf(`refused ${job}`, () => ({ all: /** @type {Refused[]} */ ([]) }))

/** @param {string} job */
export const refusedValues = (job) => refusedOf(job).entered.all

/** @param {Partial<typeof pad>} change */
function put(change) {
  Object.assign(pad, change)
  const { typed, at, back, angle } = pad
  const { enter, forget, touched } = half(state.route.job)
  if (typed || angle) enter({ at: location.hash, typed, place: at, back, angle })
  else if (touched) forget()
  redraw()
}

/** What was half typed before the page was ended. */
export function foundHalf() {
  const { isFound } = half(state.route.job)
  return { isFound, forget: () => put({ typed: '', angle: '', refusal: '' }) }
}

/** What the pad shows, to be read only. @type {Readonly<typeof pad>} */
export const shown = pad

/** The bench as the address says; none if the engine has no such part. @param {JobView} view @returns {Bench | null} */
export function benchOf(view) {
  if (pad.route !== state.route) arrive()
  const { route } = state
  const part = view.assessment.parts.find((one) => one.part === route.part)
  if (!part) return null
  const all = readQuantities(part.kind)
  // What can no longer be measured is not asked for by itself.
  const asked =
    all.find(({ id }) => id === route.quantity) ?? all.find(({ id }) => !isGone(view, part.part, id)) ?? all[0]
  if (!asked) return null
  const quantity = asked.id
  const phase = catalogue().phases.find(({ id }) => id === route.phase)?.id ?? 'found'
  const steps = walkOf(view, part, quantity, nameOn(view.job))
  const mine = steps.filter((step) => step.part.part === part.part && step.quantity === quantity)
  const open = mine.find((step) => step.needed && !standingAt(step, phase))
  const isDone = pad.doneAt === `${phase} ${part.part} ${quantity}` && !open
  const at = mine.find((step) => pad.at === `${phase} ${step.id}`)
  return { view, part, quantity, phase, steps, step: isDone ? undefined : (at ?? open ?? mine[0]) }
}

/** @returns {Bench | null} */
export function bench() {
  const view = shownJob()
  return view && benchOf(view)
}

function arrive() {
  Object.assign(pad, { route: state.route, typed: '', refusal: '', back: '', angle: '', said: '', isSettingUp: null })
  const { entered: { at, typed, place, back, angle }, forget } = half(state.route.job)
  if (at === location.hash) Object.assign(pad, { typed, at: place, back, angle })
  else if (at) forget()
}

/** The typed text, whole values in front of it taken. @param {string} typed */
export function type(typed) {
  const { whole, rest } = parted(typed)
  for (const value of whole) take(value)
  put({ typed: rest, refusal: '' })
}

/** What the pad holds besides the number.
 * @param {Partial<Pick<typeof pad, 'angle' | 'isSettingUp'>>} change */
export const note = (change) => put(change)

/** Takes what is typed for the place at which the pad stands, and goes on. @param {string} typed */
export function take(typed) {
  const here = bench()
  const value = typed.trim()
  if (!here || !value) return
  const { step } = here
  const why = step ? whyNot(here, step, value, pad.angle) : text.doneTyped
  if (!step || why) {
    const opens = step !== undefined && why === whatToSetUp(here, step, value)
    put({ typed: value, refusal: why, isSettingUp: opens || pad.isSettingUp })
    if (opens) queueMicrotask(() => document.querySelector('.set-up')?.scrollIntoView())
    return
  }
  const wasRead = standingAt(step, here.phase) !== undefined
  const reading = readingOf(here, step, value, pad.angle)
  send(here.view, step, reading)
  put({ typed: '', refusal: '', isSettingUp: false, takenAt: Date.now() })
  goOn(step, wasRead, reading.value)
}

/** Leaves the place as it is. */
export function skip() {
  const here = bench()
  // The second tap of a double tap skips nothing.
  if (!here?.step || Date.now() - pad.takenAt < 500) return
  move(1)
}

/** To the neighbour in the walk. @param {1 | -1} by */
export function move(by) {
  const here = bench()
  if (!here) return
  const walked = walkedOf(here)
  const from = here.step ? walked.findIndex(({ id }) => id === here.step?.id) : walked.length
  const next = walked[from + by]
  if (next) goTo(next)
}

/** To a place. From a place that is open, one that was read already is only put right: the hand then comes back.
 * @param {Step} step */
export function goTo(step) {
  const here = bench()
  if (!here) return
  const comesBack = here.step
    && here.step.id !== step.id
    && !standingAt(here.step, here.phase)
    && standingAt(step, here.phase)
  const back = comesBack && here.step ? here.step.id : ''
  place(here.view.job, step, here.phase)
  put({ back })
}

/** Another quantity or phase of the same part. @param {{ quantity?: Quantity, phase?: Phase }} to */
export function turnTo(to) {
  const here = bench()
  if (!here) return
  walkTo(toMeasure(here.view.job, here.part.part, to.quantity ?? here.quantity, to.phase ?? here.phase))
  put({ at: '', doneAt: '', back: '', refusal: '', angle: '' })
}

/** The odd value is so: the same reading again, as sure.
 * @param {string} job @param {Step} step @param {Reading} reading */
export const confirm = (job, step, reading) => keep(job, step, { ...reading, sure: true }, [])

/** Puts away what the store refused. @param {string} job @param {Refused} refused */
export function forget(job, refused) {
  const { entered: { all }, enter } = refusedOf(job)
  enter({ all: all.filter((other) => other !== refused) })
}

/** How a place is called in a sentence. @param {Step} step */
export const placeName = (step) => text.place(step.part.label, step.words === 'diameter' ? '' : step.words, step.label)

/** @param {Bench} here @returns {Step[]} */
function walkedOf({ view, steps, step }) {
  const isOn = (/** @type {Step} */ one) =>
    settingOf({ job: view.job, kind: one.part.kind, quantity: one.quantity }).optional
  return steps.filter((one) => one.needed || one.id === step?.id || isOn(one))
}

/** @param {JobView} view @param {Step} step @param {Reading} reading */
function send(view, step, reading) {
  const instrument = state.shelf.instruments.find(({ id }) => id === reading.instrument)
  const known = view.instruments.find(({ id }) => id === reading.instrument)
  // The job keeps its own copy, so that it says the same in another shop.
  const isNews = instrument && JSON.stringify(known) !== JSON.stringify(instrument)
  keep(view.job, step, reading, isNews ? [{ do: 'note-instrument', instrument }] : [])
}

/** @param {string} job @param {Step} step @param {Reading} reading
 * @param {import('../types/api.d.ts').Change[]} before */
function keep(job, step, reading, before) {
  submit(job, ...before, { do: 'measure', reading }).catch((failure) => {
    const why = failure instanceof Error ? failure.message : words.errors.broke
    const { entered: { all }, enter } = refusedOf(job)
    const { part: { part }, quantity, name, spot } = step
    enter({ all: [...all, { part, quantity, name, spot, value: reading.value, why }] })
  })
}

/** @param {Step} from @param {boolean} wasRead @param {string} value */
function goOn(from, wasRead, value) {
  const here = bench()
  if (!here) return
  feelTick()
  const walked = walkedOf({ ...here, step: from })
  const next = walked.find(({ id }) => id === pad.back) ?? after(walked, from.id, wasRead, here.phase)
  pad.said = text.taken(placeName(from), value, next ? placeName(next) : '')
  pad.back = ''
  if (next) return place(here.view.job, next, here.phase)
  put({ doneAt: `${here.phase} ${from.part.part} ${from.quantity}` })
}

/** @param {string} job @param {Step} step @param {Phase} phase */
function place(job, step, phase) {
  Object.assign(pad, { at: `${phase} ${step.id}`, doneAt: '', refusal: '', angle: '' })
  if (step.part.part !== state.route.part || step.quantity !== state.route.quantity) {
    walkTo(toMeasure(job, step.part.part, step.quantity, phase))
  }
  put({})
  // After the drawing, which the line above has asked for. Where all scrolls together the keys stay where they are.
  queueMicrotask(() =>
    document.querySelector('html:not(.flowing) .place[aria-current=step]')?.scrollIntoView({ block: 'nearest' }))
}

/** @param {string} address */
function walkTo(address) {
  readdress(address)
  pad.route = state.route
}
