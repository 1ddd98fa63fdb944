// The reading that a typed number becomes, with all that belongs to it.
/** @import { Reading } from '../types/api.d.ts' */
/** @import { Bench } from './pad.js' */
/** @import { Step } from './walk.js' */
import { quantityOf } from '../catalogue.js'
import { withUnit } from '../lengths.js'
import { words } from '../words.js'
import { isDifference, isValue, leading } from './entry.js'
import { instrumentFor, settingOf, unitOf } from './tools.js'
import { standingAt } from './walk.js'

const text = words.measure

/** Why a text is not taken, in a sentence; empty if it is. What only the core can tell, it tells later.
 * @param {Bench} here @param {Step} step @param {string} value @param {string} angle */
export const whyNot = (here, step, value, angle) =>
  isValue(value)
    ? (angle.trim() && !/^\d{1,3}$/.test(angle.trim()) ? text.angleWrong(angle.trim()) : whatToSetUp(here, step, value))
    : text.notALength(value)

/** What must be set up first for a value to be taken. @param {Bench} here @param {Step} step @param {string} value */
export function whatToSetUp(here, step, value) {
  const setting = settingOf(useOf(here))
  if (step.quantity === 'other' && !step.name.trim()) return text.nameFirst
  if (setting.setTo.trim() && !isValue(setting.setTo)) return text.setToWrong(setting.setTo.trim())
  if (isOverALength(step) && setting.over.trim() && !isValue(setting.over)) return text.overWrong(setting.over.trim())
  if (setting.celsius.trim()
    && !/^[+\-−]?\d{1,3}$/.test(setting.celsius.trim())) return text.celsiusWrong(setting.celsius.trim())
  if (isDifference(withUnit(value, unitFor(here)))
    && !setting.setTo.trim()
    && quantityOf(step.part.kind, step.quantity).is_size) return text.setToFirst(value)
  return ''
}

/** @param {Step} step */
const isOverALength = ({ part, quantity }) => quantityOf(part.kind, quantity).is_over_a_length

/** @param {Bench} here @param {Step} step @param {string} value @param {string} angle @returns {Reading} */
export function readingOf(here, step, value, angle) {
  const { view, phase } = here
  const setting = settingOf(useOf(here))
  const instrument = instrumentFor(view, useOf(here))
  const unit = unitFor(here)
  return {
    part: step.part.part,
    quantity: step.quantity,
    ...(step.name ? { name: step.name } : {}),
    spot: step.spot,
    phase,
    value: withUnit(value, unit),
    ...(setting.setTo.trim() ? { set_to: withUnit(setting.setTo, unit) } : {}),
    ...(instrument ? { instrument: instrument.id } : {}),
    ...(setting.over.trim() && isOverALength(step) ? { over: withUnit(setting.over, unit) } : {}),
    ...(angle.trim() && step.quantity === 'run-out' ? { angle: Number(angle) } : {}),
    ...(setting.celsius.trim()
      ? { warmth: { celsius: Number(setting.celsius.trim().replace('−', '-')), material: setting.material } }
      : {}),
  }
}

/** A neighbour's value, to be taken again or begun with; none if it was read with another setting.
 * @param {Bench} here @returns {{ same: string, lead: string } | null} */
export function neighbour(here) {
  const { step, steps, phase } = here
  if (!step) return null
  // What is hard to believe is nothing to go by.
  const isNear = (/** @type {Step} */ one) => alike(one, step) && standingAt(one, phase)?.doubt === null
  const before = steps.slice(0, steps.findIndex(({ id }) => id === step.id)).filter((one) => isNear(one)).at(-1)
  const near = before ?? steps.find((one) => one.id !== step.id && isNear(one))
  const reading = near && standingAt(near, phase)
  if (!reading) return null
  const { taken } = reading
  const unit = unitFor(here)
  if ((taken.set_to ?? '') !== setTo(here)) return null
  const bare = taken.value.replace(/\s*[^\d.,]+$/, '')
  const inUnit = withUnit(bare, unit) === taken.value
  return { same: inUnit ? bare : taken.value, lead: inUnit ? leading(bare) : '' }
}

/** @param {Step} one @param {Step} other */
const alike = (one, other) => one.part.kind === other.part.kind && one.quantity === other.quantity

/** @param {Bench} here */
export const useOf = ({ view, part, quantity }) => ({ job: view.job, kind: part.kind, quantity })

/** @param {Bench} here */
export const unitFor = (here) => unitOf(here.view, instrumentFor(here.view, useOf(here)))

/** @param {Bench} here */
function setTo(here) {
  const typed = settingOf(useOf(here)).setTo.trim()
  return typed && withUnit(typed, unitFor(here))
}
