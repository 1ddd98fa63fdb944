// Dates as they are kept, year, month, day; and as they are shown.

/** Today by the clock on the wall. */
export const today = () => onWall(new Date())

/** The day of a moment. @param {number} millis */
export const dayOf = (millis) => onWall(new Date(millis))

/** @param {Date} date */
const onWall = (date) =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, '0')).join('-')

// Each is made once: making one takes longer than a hundred uses.
const inDays = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium' })
const inMinutes = new Intl.DateTimeFormat(undefined, { timeStyle: 'short' })
const inBoth = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' })

/** A date in the reader's own habit; as it stands if it is none. @param {string} date */
export function day(date) {
  const read = /^\d{4}-\d\d-\d\d$/.test(date) ? Date.parse(`${date}T12:00`) : NaN
  return Number.isNaN(read) ? date : inDays.format(read)
}

/** The time of day of a moment. @param {number} millis */
export const clock = (millis) => inMinutes.format(millis)

/** A moment in the reader's own habit. @param {number} millis */
export const moment = (millis) => inBoth.format(millis)
