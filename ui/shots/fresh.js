// The photo that the camera has just given: while the part is still in the hand it is taken again in one tap.
/** @import { JobView } from '../types/api.d.ts' */
import { append, submit } from '../edits/queue.js'
import { tell } from '../edits/told.js'
import { attempt, state } from '../state.js'
import { words } from '../words.js'

const text = words.shots

/** @typedef {{ job: string, part: string, photo: string }} Fresh */

/** @type {Fresh | null} */
let fresh = null

/** @param {Fresh} taken */
export function noteFresh(taken) {
  fresh = taken
}

/** Nothing, once it is no longer among the photos of its part. @param {JobView} view */
export const freshOf = (view) => {
  const own = fresh
  return own && own.job === view.job && photosOf(view, own.part).includes(own.photo) ? own : null
}

/** The photo that was taken again stands in place of the one before, unless something is marked on that.
 * @param {Fresh} before @param {string} photo */
export function takenAgain(before, photo) {
  const { job, part } = before
  const isKept = isMarked(state.saved, before)
  noteFresh({ job, part, photo })
  const at = location.hash
  return attempt(async () => {
    if (isKept) return tell({ at, sentence: text.bothKept })
    const { last_edit } = await submit(job, { do: 'remove-photo', part, photo: before.photo })
    const takeBack = last_edit ? () => append(job, { do: 'undo', edit: last_edit }) : undefined
    tell({ at, sentence: text.replaced, takeBack })
  })
}

/** Drawn on, or picked for the customer. @param {JobView | null} view @param {Fresh} of */
function isMarked(view, { job, part, photo }) {
  if (view?.job !== job) return true
  const isShown = view.shown_photos.some(([own, shown]) => own === part && shown === photo)
  return isShown || (recordOf(view, part)?.drawn[photo] ?? []).length > 0
}

/** @param {JobView} view @param {string} part */
const photosOf = (view, part) => recordOf(view, part)?.photos ?? []

/** @param {JobView} view @param {string} name */
const recordOf = ({ assessment: { outside, parts } }, name) => [...parts, ...outside].find(({ part }) => part === name)
