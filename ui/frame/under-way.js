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

/**
 * @typedef {object} Told what is told on the screen
 * @property {Steps | null} steps
 * @property {(steps: Steps) => string} [inWords] how far it is, where its steps can be seen by the person
 * @property {() => void} stop
 * @property {boolean} [isStopping]
 */

/** @type {Told | null} */
let told = null

/** Does what takes a while, and tells how far it is until it is over. What was stopped ends without an alert.
 * @template T @param {(way: number, isStopping: () => boolean) => Promise<T>} task
 * @returns {Promise<T | null>} nothing if it was stopped */
export async function underWay(task) {
  latest += 1
  const way = latest
  /** @type {Told} */
  const own = { steps: null, stop: () => stopWay(way) }
  const over = task(way, () => own.isStopping === true)
  tellUntil(own, way, over)
  try {
    return await over
  } catch (failure) {
    if (!(failure instanceof Refusal) || failure.code !== 'stopped') throw failure
    state.notice = words.frame.stopped
    return null
  }
}

/** @param {Told} own @param {number} way @param {Promise<unknown>} over */
async function tellUntil(own, way, over) {
  let isOver = false
  const ended = over.catch(() => {}).then(() => {
    isOver = true
  })
  const wait = (/** @type {number} */ time) => Promise.race([ended, new Promise((go) => setTimeout(go, time))])
  await wait(SOON)
  if (isOver || told) return
  told = own
  state.notice = words.frame.working
  while (!isOver) {
    // Whatever goes wrong here: the task itself says it.
    own.steps = await getSteps(way).catch(() => null)
    redraw()
    await wait(OFTEN)
  }
  tellNoMore(own)
}

/** Tells how far something is that the page itself does; whoever does it changes the steps, and ends it. Where
 * something else is told already, nothing is. @param {Told} own */
export function tellSteps(own) {
  told ??= own
  redraw()
}

/** @param {Told} own */
export function tellNoMore(own) {
  if (told === own) told = null
  redraw()
}

/** At the foot of whichever screen is open. */
export function underWayBar() {
  if (!told) return ''
  const own = told
  const { steps, inWords, isStopping = false } = own
  const stop = () => {
    own.isStopping = true
    state.notice = words.frame.stopping
    own.stop()
    redraw()
  }
  // Without a value the bar says that something goes on, and not how far it is.
  const isKnown = steps !== null && steps.steps > 0
  const label = isKnown && inWords ? inWords(steps) : words.frame.working
  return html`<div class="under-way">
    ${isKnown
      ? html`<progress aria-label=${label} max=${steps.steps} .value=${Math.min(steps.done, steps.steps)}></progress>`
      : html`<progress aria-label=${label}></progress>`}
    ${inWords ? html`<span class="under-way-words">${label}</span>` : ''}
    <button type="button" ?disabled=${isStopping} @click=${stop}>${words.frame.stop}</button>
  </div>`
}
