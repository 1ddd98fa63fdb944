// The entry: reads what every screen needs, follows the address, draws.
import { render } from './vendor/lit-html/lit-html.js'
import { getCatalogue, getHistory, getReportText, getSettings, listJobs, openJob, Refusal } from './backend.js'
import { settleAll } from './drafts.js'
import { settled } from './edits/queue.js'
import { frame } from './frame/frame.js'
import { readRoute, toJobs } from './route.js'
import { attempt, drawWith, redraw, state } from './state.js'
import { rememberScreen } from './settings/settings.js'
import { words } from './words.js'

const root = /** @type {HTMLElement} */ (document.getElementById('app'))
/** Where each screen was scrolled to. @type {Map<string, number>} */
const scrolled = new Map()
let here = ''

/** The job as it was when what hangs on it was last read. @type {typeof state.saved} */
let readFor = null

drawWith(() => {
  if (state.saved !== readFor) follow()
  const { title, content } = frame()
  document.title = `${title} · ${words.app}`
  render(content, root)
})

/** @returns {Promise<void>} */
async function arrive() {
  if (here) scrolled.set(here, scrollY)
  settleAll()
  here = location.hash
  const route = readRoute(here)
  Object.assign(state, { route, alert: '', notice: '', sheetsOpen: false, openTag: '', zonesAhead: [] })
  if (state.saved?.job !== route.job) state.saved = null
  redraw()
  await read(route)
  redraw()
  queueMicrotask(() => {
    if (location.hash === here) settleIn(route.screen === 'part')
  })
  rememberScreen(here)
}

/** Reads what the screen shows. @param {import('./route.js').Route} route */
async function read(route) {
  try {
    if (route.screen === 'jobs') state.jobs = await listJobs()
    if (route.job && !state.saved) await readJob(route.job)
    // History and report must hold the last tap too.
    await settled()
    await readWritings()
  } catch (failure) {
    state.alert = failure instanceof Refusal ? failure.message : words.errors.broke
  }
}

/** What is written from the log, and so changes with every edit. */
async function readWritings() {
  const { screen, job } = state.route
  readFor = state.saved
  if (screen === 'history') state.history = await getHistory(job)
  if (screen === 'hand-over') state.report = await getReportText(job)
}

function follow() {
  readFor = state.saved
  attempt(readWritings)
}

/** @param {string} job */
async function readJob(job) {
  const view = await openJob(job)
  if (state.route.job === job) state.saved = view
}

/** Puts the eye and the keyboard where the new screen begins. @param {boolean} fromTop */
function settleIn(fromTop) {
  scrollTo(0, fromTop ? 0 : (scrolled.get(here) ?? 0))
  root.querySelector('h1')?.focus({ preventScroll: true })
}

async function start() {
  history.scrollRestoration = 'manual'
  const [catalogue, settings] = await Promise.all([getCatalogue(), getSettings()])
  Object.assign(state, { catalogue, settings })
  addEventListener('hashchange', arrive)
  if (location.hash.length > 2 || settings.last_screen.length <= 2) return arrive()
  // The system has ended us while we were away: back to the same screen, with the jobs one step behind it.
  history.replaceState(null, '', toJobs)
  location.hash = settings.last_screen
}

start().catch((failure) => {
  root.textContent = failure instanceof Error ? `${words.errors.start} ${failure.message}` : words.errors.start
})
