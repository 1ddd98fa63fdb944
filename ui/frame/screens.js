// Every screen there is, in the order in which they are listed: those of the shop, then those of a job in the order of
// the work. A screen is called the same here, in its address, its folder and its module.
/** @import { JobView } from '../types/api.d.ts' */
/** @import { JobScreen, Route, ScreenName, ShopScreen } from '../route.js' */
import { approval } from '../approval/approval.js'
import { causes } from '../causes/causes.js'
import { costs } from '../costs/costs.js'
import { decisions } from '../decisions/decisions.js'
import { handOver } from '../hand-over/hand-over.js'
import { history } from '../history/history.js'
import { instruments } from '../instruments/instruments.js'
import { intake } from '../intake/intake.js'
import { jobs } from '../jobs/jobs.js'
import { lists } from '../lists/lists.js'
import { marks } from '../marks/marks.js'
import { measure } from '../measure/measure.js'
import { part } from '../part/part.js'
import { plan } from '../plan/plan.js'
import { prices } from '../prices/prices.js'
import { rules } from '../rules/rules.js'
import { settings } from '../settings/settings.js'
import { sheet } from '../sheet/sheet.js'
import { sizing } from '../sizing/sizing.js'

/**
 * @typedef {object} Screen what is to be seen
 * @property {string} title
 * @property {unknown} body
 * @property {unknown} [bar] controls that stay in reach of the thumb
 */

/** @type {Record<ShopScreen, () => Screen>} */
export const SHOP_SCREENS = { jobs, instruments, prices, rules, settings }

/** @type {Record<JobScreen, (view: JobView) => Screen>} */
export const JOB_SCREENS = {
  intake, marks, plan, part, measure, sheet, sizing, causes, decisions, lists, costs, approval, 'hand-over': handOver,
  history,
}

/** To these one comes from what they belong to. @type {readonly ScreenName[]} */
const NOT_LISTED = ['rules', 'part', 'measure', 'approval']

/** @template {ScreenName} Name @param {Record<Name, unknown>} screens */
export const listed = (screens) =>
  /** @type {Name[]} */ (Object.keys(screens)).filter((name) => !NOT_LISTED.includes(name))

/** The same route, or the first screen of the job or the shop if there is no such screen. @param {Route} route @returns {Route} */
export function known(route) {
  const { screen, job } = route
  if (job) return screen in JOB_SCREENS ? route : { ...route, screen: 'plan' }
  return screen in SHOP_SCREENS ? route : { ...route, screen: 'jobs' }
}
