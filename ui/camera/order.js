// Which parts still lack a photo, in the order in which the hand meets them.
/** @import { JobView } from '../types/api.d.ts' */
/** @import { Recorded } from '../part/photos.js' */
import { state } from '../state.js'

/** All that are photographed. Once the engine is open, what comes before the opening is asked for no longer; nor is
 * what is looked at with another part. @param {JobView} view @returns {Recorded[]} */
export function photographed({ job, assessment: { outside, parts } }) {
  const isOpened = parts.some((part) => hasPhoto(job, part) || part.seen === 'clean' || part.seen === 'worn')
  return [
    ...(isOpened ? outside.filter((here) => hasPhoto(job, here)) : outside),
    ...parts.filter((part) => part.seen !== 'along' || hasPhoto(job, part)),
  ]
}

/** Those without a photo, from a part on; from the first one, if there is no such part.
 * @param {JobView} view @param {string} from @returns {Recorded[]} */
export function lacking(view, from) {
  const { outside, parts } = view.assessment
  const inOrder = [...outside, ...parts]
  const asked = new Set(photographed(view))
  const begin = Math.max(0, inOrder.findIndex(({ part }) => part === from))
  return inOrder.slice(begin).filter((part) => asked.has(part) && !hasPhoto(view.job, part))
}

/** In its job, or taken and on its way there. @param {string} job @param {Recorded} part */
export const hasPhoto = (job, { part, photos }) =>
  photos.length > 0 || state.shots.some((shot) => shot.job === job && shot.part === part && shot.taken)
