// What more than one screen reads; what only one needs it holds itself. Whoever changes anything calls `redraw`.
/** @import { Catalogue, JobView, Settings, Shelf, Shot } from './types/api.d.ts' */
/** @import { Route } from './route.js' */
import { readRoute } from './route.js'

/**
 * @typedef {object} Waiting a change on its way to the store
 * @property {string} job
 * @property {(view: JobView) => JobView} guess what it will look like once saved
 * @property {() => Promise<JobView>} send
 *
 * @typedef {object} State
 * @property {Route} route
 * @property {Catalogue | null} catalogue the trade's words and tables
 * @property {Settings} settings
 * @property {Shelf} shelf the shop's instruments and spec sheets
 * @property {Shot[]} shots photos from the camera that are in no job yet
 * @property {JobView | null} saved the open job as the store last gave it
 * @property {Waiting[]} waiting changes not yet in `saved`, in order
 * @property {string} alert a sentence about what went wrong
 * @property {string} notice a sentence about what went right
 * @property {{ alert?: string, notice?: string }} onArrival what is told on the screen that is gone to next
 * @property {string} cameFrom the screen of a job from which the person went to what belongs to the shop
 * @property {boolean} wide plan and part have room side by side
 */

const room = matchMedia('(min-width: 56.25rem) and (height > 30rem)')

/** @type {State} */
export const state = {
  route: readRoute(''),
  catalogue: null,
  settings: {
    shop_name: '',
    shop_address: '',
    shop_phone: '',
    shop_conditions: '',
    last_screen: '',
    paper: 'a4',
    terms: { tappet: 'british', 'end-float': 'british', 'piston-pin': 'american' },
    look: 'device',
    text_size: 100,
    keys: true,
  },
  shelf: { instruments: [], sheets: [], prices: null },
  shots: [],
  saved: null,
  waiting: [],
  alert: '',
  notice: '',
  onArrival: {},
  cameFrom: '',
  wide: room.matches,
}

room.addEventListener('change', () => {
  state.wide = room.matches
  redraw()
})

/** The open job as the person should see it: as saved, with what is on its way. @returns {JobView | null} */
export function shownJob() {
  const { saved, waiting, route } = state
  if (!saved || saved.job !== route.job) return null
  return waiting.filter((entry) => entry.job === saved.job).reduce((view, entry) => entry.guess(view), saved)
}

/** @type {() => void} */
let draw = () => {}
let drawing = false

/** @param {() => void} how */
export const drawWith = (how) => {
  draw = how
}

/** Draws once, after the current event has been dealt with and before the next frame. */
export function redraw() {
  if (drawing) return
  drawing = true
  queueMicrotask(() => {
    drawing = false
    draw()
  })
}

/** Runs an action; a failure becomes a sentence on the screen. Answers whether it went well.
 * @param {() => Promise<void>} action @returns {Promise<boolean>} */
export async function attempt(action) {
  try {
    await action()
    return true
  } catch (failure) {
    state.alert = failure instanceof Error ? failure.message : String(failure)
    return false
  } finally {
    redraw()
  }
}
