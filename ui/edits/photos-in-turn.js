// Several photos at once: taken in one after the other, so that what is tapped meanwhile waits for one of them at most.
// A refused one is told by its name while the rest goes on.
import { tellNoMore, tellSteps } from '../frame/under-way.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { photographPart, submitPhoto } from './queue.js'
import { tell } from './told.js'

const text = words.photos

/** @typedef {{ job: string, part: string, file: File }} Picked */
/** @typedef {{ name: string, why: string }} Refused */

/** What is not in its job yet, while several are; the first is on its way. @type {Picked[]} */
let waiting = []
/** All that were chosen since none waited. */
let chosen = 0
let isStopped = false

/** @param {string} job @param {string} part @param {Iterable<File>} files */
export async function appendPhotos(job, part, files) {
  const picked = Array.from(files, (file) => ({ job, part, file }))
  const [only, ...others] = picked
  // One alone shows at once, or is refused in a sentence.
  if (only && others.length === 0 && waiting.length === 0) return photographPart(job, part, only.file)
  const isBegun = waiting.length > 0
  waiting.push(...picked)
  chosen = isBegun ? chosen + picked.length : picked.length
  if (!isBegun) await takeAll()
}

async function takeAll() {
  isStopped = false
  const steps = { done: 0, steps: 0 }
  const bar = { steps, inWords: text.nth, stop: stopAfterThis }
  /** @type {Refused[]} */
  const refused = []
  for (let next = waiting[0]; next; next = waiting[0]) {
    Object.assign(steps, { done: chosen - waiting.length, steps: chosen })
    tellSteps(bar)
    await takeIn(next).catch((failure) => {
      refused.push({ name: next.file.name, why: failure instanceof Error ? failure.message : String(failure) })
      state.alert = inWords(refused)
    })
    waiting.shift()
  }
  tellNoMore(bar)
  // Whatever was closed or left meanwhile: all of them once more, at the end.
  if (refused.length > 0) state.alert = inWords(refused)
  const saved = text.saved(chosen - refused.length)
  tell({ at: location.hash, sentence: isStopped ? text.stopped(saved) : saved })
}

/** What else is recorded clears the alert, for it is read by then; the next photo is no such thing.
 * @param {Picked} picked */
function takeIn({ job, part, file }) {
  const { alert } = state
  const saving = submitPhoto(job, part, file)
  state.alert = alert
  return saving
}

function stopAfterThis() {
  isStopped = true
  chosen -= waiting.length - 1
  waiting.length = 1
}

/** Each reason once, with those of which it holds. @param {Refused[]} refused */
function inWords(refused) {
  const reasons = [...new Set(refused.map(({ why }) => why))]
  const lines = reasons.map((why) =>
    text.refusedOf(refused.filter((other) => other.why === why).map(({ name }) => name), why))
  return lines.join(' ')
}
