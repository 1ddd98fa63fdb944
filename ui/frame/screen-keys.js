// Which letter leads to which screen of a job.
/** @import { ScreenName } from '../route.js' */

/** @type {readonly [string, ScreenName][]} */
export const SCREEN_KEYS = [
  ['j', 'jobs'],
  ['t', 'intake'],
  ['m', 'marks'],
  ['p', 'plan'],
  ['s', 'sheet'],
  ['z', 'sizing'],
  ['c', 'causes'],
  ['d', 'decisions'],
  ['l', 'lists'],
  ['k', 'costs'],
  ['h', 'hand-over'],
  ['y', 'history'],
]
