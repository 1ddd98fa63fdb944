// What is being typed and the place it goes to. A value is taken on the spot: the hand goes on while it is still on its
// way to the store, so that no key of a fast micrometer is lost or lands at another place.
/** @import { JobView, PartView, Phase, Quantity, Reading } from '../types/api.d.ts' */
/** @import { Step } from './walk.js' */
import { catalogue } from '../catalogue.js'
import { submit } from '../edits/queue.js'
import { readdress } from '../readdress.js'
import { toMeasure } from '../route.js'
import { redraw, shownJob, state } from '../state.js'
import { words } from '../words.js'
import { isGone } from './before-apart.js'
import { parted } from './entry.js'
import { readingOf, whatToSetUp, whyNot } from './reading.js'
import { settingOf } from './tools.js'
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
 * @property {string} job
 * @property {Step} step
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
  /** The quantity of the manual's own that is measured. */
  name: '',
  /** What was taken last and what comes next, for those who listen. */
  said: '',
  /** What is measured, and with what, is unfolded to be changed. */
  isSettingUp: false,
  takenAt: 0,
  /** @type {Refused[]} */
  refused: [],
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
  const steps = walkOf(view, part, quantity, pad.name)
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
  Object.assign(pad, { route: state.route, typed: '', refusal: '', back: '', angle: '', said: '', isSettingUp: false })
}

/** The typed text, whole values in front of it taken. @param {string} typed */
export function type(typed) {
  const { whole, rest } = parted(typed)
  for (const value of whole) take(value)
  Object.assign(pad, { typed: rest, refusal: '' })
  redraw()
}

/** What the pad holds besides the number.
 * @param {Partial<Pick<typeof pad, 'angle' | 'name' | 'isSettingUp'>>} change */
export function note(change) {
  Object.assign(pad, change)
  redraw()
}

/** Takes what is typed for the place at which the pad stands, and goes on. @param {string} typed */
export function take(typed) {
  const here = bench()
  const value = typed.trim()
  if (!here || !value) return
  const { step } = here
  const why = step ? whyNot(here, step, value, pad.angle) : text.doneTyped
  if (!step || why) {
    const opens = step !== undefined && why === whatToSetUp(here, step, value)
    Object.assign(pad, { typed: value, refusal: why, isSettingUp: pad.isSettingUp || opens })
    redraw()
    if (opens) queueMicrotask(() => document.querySelector('.set-up')?.scrollIntoView())
    return
  }
  const wasRead = standingAt(step, here.phase) !== undefined
  const reading = readingOf(here, step, value, pad.angle)
  send(here.view, step, reading)
  Object.assign(pad, { typed: '', refusal: '', isSettingUp: false, takenAt: Date.now() })
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
  pad.back = back
  redraw()
}

/** Another quantity or phase of the same part. @param {{ quantity?: Quantity, phase?: Phase }} to */
export function turnTo(to) {
  const here = bench()
  if (!here) return
  walkTo(toMeasure(here.view.job, here.part.part, to.quantity ?? here.quantity, to.phase ?? here.phase))
  Object.assign(pad, { at: '', doneAt: '', back: '', refusal: '', angle: '' })
  redraw()
}

/** The odd value is so: the same reading again, as sure.
 * @param {string} job @param {Step} step @param {Reading} reading */
export const confirm = (job, step, reading) => keep(job, step, { ...reading, sure: true }, [])

/** Puts away what the store refused. @param {Refused} refused */
export function forget(refused) {
  pad.refused = pad.refused.filter((other) => other !== refused)
  redraw()
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
    pad.refused = [...pad.refused, { job, step, value: reading.value, why }]
    redraw()
  })
}

/** @param {Step} from @param {boolean} wasRead @param {string} value */
function goOn(from, wasRead, value) {
  const here = bench()
  if (!here) return
  const walked = walkedOf({ ...here, step: from })
  const next = walked.find(({ id }) => id === pad.back) ?? after(walked, from.id, wasRead, here.phase)
  pad.said = text.taken(placeName(from), value, next ? placeName(next) : '')
  pad.back = ''
  if (next) return place(here.view.job, next, here.phase)
  pad.doneAt = `${here.phase} ${from.part.part} ${from.quantity}`
  redraw()
}

/** @param {string} job @param {Step} step @param {Phase} phase */
function place(job, step, phase) {
  Object.assign(pad, { at: `${phase} ${step.id}`, doneAt: '', refusal: '', angle: '' })
  if (step.part.part !== state.route.part || step.quantity !== state.route.quantity) {
    walkTo(toMeasure(job, step.part.part, step.quantity, phase))
  }
  redraw()
  // After the drawing, which the line above has asked for. Where all scrolls together the keys stay where they are.
  queueMicrotask(() =>
    document.querySelector('html:not(.flowing) .place[aria-current=step]')?.scrollIntoView({ block: 'nearest' }))
}

/** @param {string} address */
function walkTo(address) {
  readdress(address)
  pad.route = state.route
}
