// Every photo of a job, in the order in which the hand meets the parts.
/** @import { Recorded } from './photos.js' */
import { toPhoto } from '../route.js'
import { words } from '../words.js'

/** @typedef {{ part: Recorded, photo: string }} PartPhoto a photo of a part */

/** Those that are saved. @param {Recorded[]} walk @returns {PartPhoto[]} */
export const photosOf = (walk) =>
  walk.flatMap((part) => part.photos.filter((photo) => !photo.startsWith('blob:')).map((photo) => ({ part, photo })))

/** @param {PartPhoto} shown */
export const nameOf = ({ part, photo }) => words.part.photo(part.photos.indexOf(photo) + 1, part.label)

/** @param {string} job @param {PartPhoto} shown */
export const addressOf = (job, { part, photo }) => toPhoto(job, part.part, photo)
