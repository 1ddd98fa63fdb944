// What was recorded of many parts with one tap is taken back with one, and done again with one; in the history each
// stands as an entry of its own.
/** @import { Change } from '../types/api.d.ts' */
import { getHistory } from '../backend.js'
import { keep, keptOf } from '../kept.js'
import { toScreen } from '../route.js'
import { attempt } from '../state.js'
import { words } from '../words.js'
import { submit } from './queue.js'
import { tell } from './told.js'

const text = words.told

/** @typedef {object} Together what was last recorded at once in a job
 * @property {string} last the latest of its edits
 * @property {number} count how many they are
 * @property {string} what in words
 * @property {string | null} undo the latest of the edits that took them back, if that was done
 */

/** It outlives the page: the wrong tap may be seen only then. @param {string} job */
const nameOf = (job) => `together ${job}`

/** Appends all or none, and tells it with the way back.
 * @param {string} job @param {string} what @param {string} sentence @param {Change[]} changes */
export const appendTogether = (job, what, sentence, changes) => attempt(async () => {
  const at = location.hash
  const { last_edit } = await submit(job, ...changes)
  if (!last_edit) return
  keep(nameOf(job), { last: last_edit, count: changes.length, what, undo: null })
  tell({ at, sentence, takeBack: () => undo(job, last_edit), place: toScreen(job, 'history') })
})

/** The edit that is being taken back: the second of a double tap finds the history not yet changed. */
let underWay = ''

/** Takes back an edit, and what was recorded together with it; the same does it again. @param {string} job
 * @param {string} edit */
export const undo = (job, edit) => attempt(async () => {
  /** @type {Together | undefined} */
  const together = keptOf(nameOf(job))
  if (!together || !(together.undo === edit || together.last === edit)) {
    await submit(job, { do: 'undo', edit })
    return
  }
  if (underWay === edit) return
  underWay = edit
  try {
    await undoAll(job, edit, together)
  } finally {
    underWay = ''
  }
})

/** @param {string} job @param {string} edit @param {Together} together */
async function undoAll(job, edit, together) {
  const at = location.hash
  const isBack = together.undo === edit
  // They stand one after the other, the latest first.
  const lines = await getHistory(job)
  const first = lines.findIndex((line) => line.edit === edit)
  const all = lines.slice(first, first + together.count).filter(({ undone }) => !undone)
  const view = await submit(job, ...all.map((line) => /** @type {const} */ ({ do: 'undo', edit: line.edit })))
  keep(nameOf(job), { ...together, undo: isBack ? null : view.redo })
  tell({ at, sentence: (isBack ? text.redone : text.undone)(text.together(together.what)) })
}
