// Dates as they are kept: year, month, day.

/** Today by the clock on the wall. */
export const today = () => onWall(new Date())

/** The day of a moment. @param {number} millis */
export const dayOf = (millis) => onWall(new Date(millis))

/** @param {Date} date */
const onWall = (date) =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, '0')).join('-')
