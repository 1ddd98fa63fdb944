// What takes a while: how far it is, and a way to stop it.
/** @import { Steps } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { getSteps, Refusal, stopWay } from '../backend.js'
import { redraw, state } from '../state.js'
import { words } from '../words.js'

/** A shorter wait needs no word. */
const SOON = 400
/** How often it is asked how far it is. */
const OFTEN = 200

/** A page that was loaded anew must not ask about what the one before it began. */
let latest = Date.now() % 2 ** 31

/** What is told on the screen. @type {{ way: number, steps: Steps | null, stopping: boolean } | null} */
let told = null

/** Does what takes a while, and tells how far it is until it is over. What was stopped ends without an alert.
 * @template T @param {(way: number, isStopping: () => boolean) => Promise<T>} task
 * @returns {Promise<T | null>} nothing if it was stopped */
export async function underWay(task) {
  latest += 1
  const way = latest
  const over = task(way, () => told?.way === way && told.stopping)
  tellUntil(way, over)
  try {
    return await over
  } catch (failure) {
    if (!(failure instanceof Refusal) || failure.code !== 'stopped') throw failure
    state.notice = words.frame.stopped
    return null
  }
}

/** @param {number} way @param {Promise<unknown>} over */
async function tellUntil(way, over) {
  let isOver = false
  const ended = over.catch(() => {}).then(() => {
    isOver = true
  })
  const wait = (/** @type {number} */ time) => Promise.race([ended, new Promise((go) => setTimeout(go, time))])
  await wait(SOON)
  if (isOver || told) return
  told = { way, steps: null, stopping: false }
  state.notice = words.frame.working
  while (!isOver) {
    // Whatever goes wrong here: the task itself says it.
    told.steps = await getSteps(way).catch(() => null)
    redraw()
    await wait(OFTEN)
  }
  told = null
  redraw()
}

/** At the foot of whichever screen is open. */
export function underWayBar() {
  if (!told) return ''
  const { way, steps, stopping } = told
  const stop = () => {
    if (told) told.stopping = true
    state.notice = words.frame.stopping
    stopWay(way)
    redraw()
  }
  // Without a value the bar says that something goes on, and not how far it is.
  const isKnown = steps !== null && steps.steps > 0
  return html`<div class="under-way">
    ${isKnown
      ? html`<progress aria-label=${words.frame.working} max=${steps.steps}
        .value=${Math.min(steps.done, steps.steps)}></progress>`
      : html`<progress aria-label=${words.frame.working}></progress>`}
    <button type="button" ?disabled=${stopping} @click=${stop}>${words.frame.stop}</button>
  </div>`
}
