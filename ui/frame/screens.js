// Every screen there is, in the order in which they are listed: those of the shop, then those of a job in the order of
// the work. A screen is called the same here, in its address, its folder and its module.
/** @import { Document, JobView } from '../types/api.d.ts' */
/** @import { Selection } from '../backend.js' */
/** @import { JobScreen, Route, ScreenName, ShopScreen } from '../route.js' */
import { approval } from '../approval/approval.js'
import { camera } from '../camera/camera.js'
import { backup, readBackup } from '../backup/backup.js'
import { causes } from '../causes/causes.js'
import { readNextLook } from '../causes/next-look.js'
import { readLearnt } from '../controls/price.js'
import { costs } from '../costs/costs.js'
import { decisions } from '../decisions/decisions.js'
import { forgetMessage, handOver, readMessage } from '../hand-over/hand-over.js'
import { forgetHistory, history, readHistory } from '../history/history.js'
import { instruments } from '../instruments/instruments.js'
import { readBefore } from '../intake/earlier.js'
import { intake } from '../intake/intake.js'
import { readEarlier } from '../intake/starts.js'
import { jobs, readJobs } from '../jobs/jobs.js'
import { label } from '../label/label.js'
import { arriveAtLabels, labels } from '../labels/labels.js'
import { lists } from '../lists/lists.js'
import { marks } from '../marks/marks.js'
import { measure } from '../measure/measure.js'
import { arriveAtPart, part, readLook } from '../part/part.js'
import { arriveAtPlan, plan } from '../plan/plan.js'
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
 * @property {boolean} [fills] a picture fills it from edge to edge
 * @property {{ title: string, body: unknown }} [beside] the list of which it shows one line, drawn only where both have
 * room side by side
 * @property {{ document: Document, selection?: Selection }} [paper] what of it is printed
 *
 * @typedef {object} Entry
 * @property {boolean} [isAside] not listed: one comes to it from what it belongs to
 * @property {(route: Route) => void | Promise<void>} [arrive] makes it ready whenever one comes to it
 * @property {(job: string) => Promise<void>} [follow] reads what is written from the log: on arrival and after each
 * edit
 *
 * @typedef {Entry & { of: 'shop', draw: () => Screen }} OfShop
 * @typedef {Entry & { of: 'job', draw: (view: JobView) => Screen }} OfJob
 */

/** @type {Record<ShopScreen, OfShop> & Record<JobScreen, OfJob>} */
export const SCREENS = {
  jobs: { of: 'shop', draw: jobs, arrive: readJobs },
  instruments: { of: 'shop', draw: instruments },
  prices: { of: 'shop', draw: prices, arrive: readLearnt },
  rules: { of: 'shop', draw: rules, isAside: true },
  label: { of: 'shop', draw: label, isAside: true },
  backup: { of: 'shop', draw: backup, isAside: true, arrive: readBackup },
  settings: { of: 'shop', draw: settings },
  intake: { of: 'job', draw: intake, arrive: readEarlier, follow: readBefore },
  marks: { of: 'job', draw: marks },
  plan: { of: 'job', draw: plan, arrive: arriveAtPlan },
  part: { of: 'job', draw: part, isAside: true, arrive: arriveAtPart, follow: readLook },
  camera: { of: 'job', draw: camera, isAside: true },
  measure: { of: 'job', draw: measure, isAside: true },
  sheet: { of: 'job', draw: sheet },
  sizing: { of: 'job', draw: sizing },
  causes: { of: 'job', draw: causes, follow: readNextLook },
  decisions: { of: 'job', draw: decisions },
  lists: { of: 'job', draw: lists },
  costs: { of: 'job', draw: costs, arrive: readLearnt },
  approval: { of: 'job', draw: approval, isAside: true },
  labels: { of: 'job', draw: labels, isAside: true, arrive: arriveAtLabels },
  'hand-over': { of: 'job', draw: handOver, arrive: forgetMessage, follow: readMessage },
  history: { of: 'job', draw: history, arrive: forgetHistory, follow: readHistory },
}

const names = /** @type {ScreenName[]} */ (Object.keys(SCREENS))

/** The screens of a job between which one goes to and fro, in the order of the work. */
export const JOB_SCREENS = /** @type {JobScreen[]} */ (names.filter((name) => isListed(name, 'job')))
/** The same of the shop. */
export const SHOP_SCREENS = /** @type {ShopScreen[]} */ (names.filter((name) => isListed(name, 'shop')))

/** @param {ScreenName} name @param {'job' | 'shop'} whose */
function isListed(name, whose) {
  const { of, isAside } = SCREENS[name]
  return of === whose && !isAside
}

/** The same route; where there is no such screen, the first one of the job or the shop.
 * @param {Route} route @returns {Route} */
export function known(route) {
  const whose = route.job ? 'job' : 'shop'
  if (names.includes(route.screen) && SCREENS[route.screen].of === whose) return route
  return { ...route, screen: route.job ? 'plan' : 'jobs' }
}
