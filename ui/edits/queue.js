// The one way in: changes go to the store one after the other, and show on the screen before they are there.
/** @import { Change, JobView, Shot } from '../types/api.d.ts' */
/** @import { Waiting } from '../state.js' */
import { addAncillaryPhoto, addPhoto, appendEdits, takeInPhoto } from '../backend.js'
import { painted } from '../painted.js'
import { attempt, redraw, state } from '../state.js'
import { words } from '../words.js'
import { guess, guessAncillaryPhoto, guessPhoto } from './guess.js'
import { forgetTold, tellOf } from './told.js'

/** @type {Promise<unknown>} */
let queue = Promise.resolve()

/** Appends changes to a job, all or none; a refusal is shown. Answers whether they are saved.
 * @param {string} job @param {...Change} changes @returns {Promise<boolean>} */
export const append = (job, ...changes) => attempt(async () => {
  await submit(job, ...changes)
})

/** Appends changes to a job, all or none; rejects with the refusal, for a form that shows it in its own place.
 * @param {string} job @param {...Change} changes @returns {Promise<JobView>} the job with them */
export function submit(job, ...changes) {
  return enqueue({
    job,
    guess: (view) => changes.reduce(guess, view),
    send: async () => {
      const before = state.saved
      const view = await appendEdits(job, changes)
      tellOf(before, changes, view)
      return view
    },
  })
}

/** Adds a photo to a part; it shows at once from memory. A refusal is shown.
 * @param {string} job @param {string} part @param {File} file
 * @param {(photo: string) => void} [named] told its name once it is saved, before it is drawn under it; not if the part
 * has it already */
export const photographPart = (job, part, file, named) => attempt(async () => {
  await submitPhoto(job, part, file, named)
})

/** The same; rejects with the refusal, for those that tell it themselves.
 * @param {string} job @param {string} part @param {File} file @param {(photo: string) => void} [named] */
export const submitPhoto = (job, part, file, named) =>
  enqueuePhoto(
    job,
    file,
    (view, preview) => guessPhoto(view, part, preview),
    () => naming(job, part, () => addPhoto(job, part, file), named),
  )

/** Tells which photo of a part is new. @param {string} job @param {string | null} part
 * @param {() => Promise<JobView>} send @param {(photo: string) => void} [named] */
async function naming(job, part, send, named) {
  const before = photosOf(state.saved, part)
  const view = await send()
  const name = photosOf(view, part).find((photo) => !before.includes(photo))
  if (name && state.saved?.job === job) named?.(name)
  return view
}

/** @param {JobView | null} view @param {string | null} part */
const photosOf = (view, part) =>
  view
    ? [...view.assessment.parts, ...view.assessment.outside].find((here) => here.part === part)?.photos ?? []
    : []

/** Says what something that came with the engine looks like.
 * @param {string} job @param {string} item @param {File} file */
export const photographAncillary = (job, item, file) => attempt(async () => {
  const shows = (/** @type {JobView} */ view, /** @type {string} */ preview) => guessAncillaryPhoto(view, item, preview)
  await enqueuePhoto(job, file, shows, () => addAncillaryPhoto(job, item, file))
})

/** Takes a photo of the camera into its job, by its file: there is nothing to show before. Rejects with the refusal.
 * @param {Shot} shot @param {(photo: string) => void} [named] as for `photographPart` */
export const takeInShot = ({ job, part, shot }, named) =>
  enqueue({ job, guess: (view) => view, send: () => naming(job, part, () => takeInPhoto(shot), named) })

/** @param {string} job @param {File} file @param {(view: JobView, preview: string) => JobView} shows
 * @param {() => Promise<JobView>} send */
function enqueuePhoto(job, file, shows, send) {
  const preview = URL.createObjectURL(file)
  const saving = enqueue({ job, guess: (view) => shows(view, preview), send })
  const forget = () => setTimeout(() => URL.revokeObjectURL(preview), 5000)
  saving.then(forget, forget)
  return saving
}

/** When all that was done so far has been saved or refused. */
export const settled = () => queue

/** @param {Waiting} entry @returns {Promise<JobView>} */
function enqueue(entry) {
  state.waiting = [...state.waiting, entry]
  state.alert = ''
  forgetTold()
  redraw()
  const seen = painted()
  const result = queue.then(() => seen).then(() => settle(entry))
  queue = result.catch(() => {})
  return result
}

/** @param {Waiting} entry */
async function settle(entry) {
  try {
    const view = await entry.send()
    if (state.saved?.job === entry.job) state.saved = view
    state.notice = words.frame.saved
    return view
  } catch (failure) {
    state.notice = ''
    throw failure
  } finally {
    // Saved or refused: either way the guess has served. What was refused disappears from the screen again.
    state.waiting = state.waiting.filter((other) => other !== entry)
    redraw()
  }
}
