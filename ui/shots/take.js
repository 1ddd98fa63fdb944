// A photo on its way from the camera into its job. It is noted before the camera opens and stays noted until it is in
// the job: the system may end us behind the camera.
/** @import { Shot } from '../types/api.d.ts' */
import { beginShot, dropShot, endShot, listShots, takePhoto } from '../backend.js'
import { takeInShot } from '../edits/queue.js'
import { attempt, redraw, state } from '../state.js'
import { words } from '../words.js'
import { noteFresh } from './fresh.js'

/** Of what a photo is taken.
 * @typedef {{ part: string } | { ancillary: string }} Of */

/** The shot for which this page has opened the camera. */
let open = ''
/** Those that are being taken into their job. @type {Set<string>} */
const onTheirWay = new Set()

export async function readShots() {
  state.shots = await listShots()
}

/** Opens the camera, and takes its photo in.
 * @param {string} job @param {Of} of @param {(photo: string) => void} [named] told its name once it is saved */
export const photograph = (job, of, named) =>
  attempt(async () => {
    const shot = await beginShot({ job, ...of })
    open = shot.shot
    state.shots = [...state.shots, shot]
    redraw()
    const end = await takePhoto(shot.shot).finally(async () => {
      open = ''
      await readShots()
      redraw()
    })
    if (end === 'taken') await into(shot, named)
    else state.notice = words.shots.notTaken
  })

/** @param {Shot} shot */
export const takeIn = (shot) =>
  attempt(() => into(shot, (photo) => shot.part && noteFresh({ job: shot.job, part: shot.part, photo })))

/** @param {Shot} shot @param {(photo: string) => void} [named] */
async function into(shot, named) {
  onTheirWay.add(shot.shot)
  redraw()
  try {
    await takeInShot(shot, named)
  } finally {
    onTheirWay.delete(shot.shot)
    await readShots()
    redraw()
  }
}

/** @param {Shot} shot */
export const throwAway = ({ shot }) =>
  attempt(async () => {
    state.shots = await dropShot(shot)
  })

/** The camera has closed, and nobody was there to hear it. @param {Shot} shot */
export const sayClosed = ({ shot }) =>
  attempt(async () => {
    state.shots = await endShot(shot).finally(readShots)
  })

/** How far a shot is. @param {Shot} shot @returns {'open' | 'unheard' | 'saving' | 'waits'} */
export function stageOf({ shot, taken }) {
  if (shot === open) return 'open'
  if (onTheirWay.has(shot)) return 'saving'
  return taken ? 'waits' : 'unheard'
}
