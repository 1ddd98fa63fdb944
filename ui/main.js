// The entry: reads what every screen needs, follows the address, draws.
import { render } from './vendor/lit-html/lit-html.js'
import { getCatalogue, getSettings, getShelf, openJob, readPhone } from './backend.js'
import { unfoldFound } from './controls/found-draft.js'
import { settleAll } from './drafts.js'
import { settled } from './edits/queue.js'
import { forgetTold, toldHere } from './edits/told.js'
import { keepingFocus } from './frame/focus.js'
import { frame } from './frame/frame.js'
import { keepDroppedOut } from './frame/dropped.js'
import { keepInSight } from './frame/in-sight.js'
import { heed } from './frame/keyboard.js'
import { showLook } from './frame/look.js'
import { keepRoom } from './frame/room.js'
import { known, SCREENS } from './frame/screens.js'
import { noteScroll, scrollBack, scrolledTo } from './frame/scrolled.js'
import { foldScreens } from './frame/title-block.js'
import { dropGone } from './gone-drafts.js'
import { toOpenTag } from './part/tags.js'
import { takeArrivals } from './jobs/taking-in.js'
import { readKept } from './kept.js'
import { keepLit } from './phone.js'
import { readRoute, toShop } from './route.js'
import { rememberScreen } from './settings/settings.js'
import { readShots } from './shots/take.js'
import { attempt, drawWith, redraw, state } from './state.js'
import { words } from './words.js'

const root = /** @type {HTMLElement} */ (document.getElementById('app'))
let here = ''

/** The job as it was when what hangs on it was last read. @type {typeof state.saved} */
let readFor = null

drawWith(() => {
  if (state.saved !== readFor) attempt(follow)
  const { title, content } = frame()
  document.title = `${title} · ${words.app}`
  keepingFocus(() => render(content, root))
  unfoldFound()
})

/** Follows the address to another screen. */
async function arrive() {
  if (here) noteScroll(here)
  settleAll()
  if (state.route.job) state.cameFrom = here
  here = location.hash
  const route = known(readRoute(here))
  const isKnown = !route.job || state.saved?.job === route.job
  if (!isKnown) state.saved = null
  Object.assign(state, { route, alert: '', notice: '', ...state.onArrival, onArrival: {} })
  if (!toldHere()) forgetTold()
  foldScreens()
  rememberScreen(here)
  // Both hands are at the gauge.
  keepLit(route.screen === 'measure')
  const made = attempt(async () => SCREENS[route.screen].arrive?.(route))
  letGo()
  redraw()
  if (isKnown) settleIn(here)
  await attempt(async () => {
    if (!isKnown) await readJob(route.job)
    if (await made) await follow()
  })
  if (!isKnown) settleIn(here)
  scrollBack(here)
}

/** What is written from the log changes with every edit. */
async function follow() {
  readFor = state.saved
  const { screen, job } = state.route
  const read = SCREENS[screen].follow
  if (!read) return
  // It must hold the last tap too.
  await settled()
  await read(job)
}

/** @param {string} job */
async function readJob(job) {
  const view = await openJob(job)
  dropGone(view)
  if (state.route.job === job) state.saved = view
}

/** What had the keyboard and is drawn no more would make the browser lay out the page in the middle of drawing it. A
 * field may stay, and a phone's keyboard with it. */
function letGo() {
  const before = document.activeElement
  if (before instanceof HTMLElement && !before.matches('input, textarea, select')) before.blur()
}

/** What scrolls. */
const screen = () => root.querySelector('.screen-main')

/** Puts the eye and the keyboard where the new screen begins, once it is drawn. @param {string} address */
function settleIn(address) {
  queueMicrotask(() => {
    keepRoom()
    if (address !== here) return
    screen()?.scrollTo(0, state.route.screen === 'part' ? 0 : scrolledTo(address))
    // What waits for a number must have the keyboard before the first digit comes; a photo is zoomed by keys.
    const keys = root.querySelector('.pad-input, .photo-frame')
    const start = /** @type {HTMLElement | null} */ (keys ?? root.querySelector('h1'))
    start?.focus({ preventScroll: true })
    document.querySelector('.flowing .pad')?.scrollIntoView()
    settleBeside()
    if (state.route.tag) toOpenTag()
    if (state.route.subject) root.querySelector('.mark-form')?.scrollIntoView({ block: 'start' })
  })
}

/** The screen whose list stands beside. */
let besides = ''

/** A list keeps its place from line to line; what is open in it is in sight. */
function settleBeside() {
  const { screen, subject, part } = state.route
  const beside = root.querySelector('.beside')
  if (besides !== screen) beside?.scrollTo(0, 0)
  besides = screen
  if (subject || part) beside?.querySelector('[aria-current="true"]')?.scrollIntoView({ block: 'nearest' })
}

async function start() {
  const [catalogue, settings, shelf] = await Promise.all([
    getCatalogue(),
    getSettings(),
    getShelf(),
    readKept(),
    readPhone(),
    readShots(),
  ])
  Object.assign(state, { catalogue, settings, shelf })
  showLook(settings)
  addEventListener('hashchange', arrive)
  addEventListener('keydown', heed)
  // Told by the shell, or found when the person comes back from the program that has opened a file.
  addEventListener('arrived', takeArrivals)
  document.addEventListener('visibilitychange', () => document.hidden || takeArrivals())
  keepDroppedOut()
  keepInSight()
  if (location.hash.length > 2 || settings.last_screen.length <= 2) return arrive()
  // The system has ended us while we were away: back to the same screen, with the jobs one step behind it.
  history.replaceState(null, '', toShop('jobs'))
  // To go where one is changes nothing, so nothing would be drawn.
  if (settings.last_screen === location.hash) return arrive()
  location.hash = settings.last_screen
}

/** What waits to be taken in is taken in once the first screen stands. */
const begin = () => start().then(takeArrivals)

// A fault of ours must not pass in silence.
for (const fault of ['error', 'unhandledrejection']) {
  addEventListener(fault, () => {
    state.alert = words.errors.broke
    redraw()
  })
}

// A web view that is too old says so instead: see frame/old-view.js.
if (!document.documentElement.hasAttribute('data-too-old')) {
  begin().catch((failure) => {
    root.textContent = failure instanceof Error ? `${words.errors.start} ${failure.message}` : words.errors.start
  })
}
