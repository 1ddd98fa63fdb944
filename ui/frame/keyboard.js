// What single keys do, while no field has the keyboard. They press what stands on the screen: nothing is done that a
// finger could not do.
/** @import { JobScreen } from '../route.js' */
import { go, toScreen, toShop } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { keysWork, openKeySheet } from './key-sheet.js'
import { SCREEN_KEYS } from './screen-keys.js'

/** @param {KeyboardEvent} event */
export function heed(event) {
  if (event.defaultPrevented || document.querySelector('dialog[open]')) return
  const key = event.key.toLowerCase()
  // The page as it stands is nothing to print.
  if (event.ctrlKey && !event.altKey && key === 'p' && press(named(words.frame.print))) return event.preventDefault()
  if (event.ctrlKey || event.altKey || event.metaKey || !keysWork() || isTypedInto(event.target)) return
  // Under the micrometer every key is a reading's.
  if (state.route.screen === 'measure' && key !== '?') return
  if (doneBy(key)) event.preventDefault()
}

/** @param {EventTarget | null} target */
const isTypedInto = (target) =>
  target instanceof Element && target.closest('input, textarea, select, [contenteditable]') !== null

/** Whether the key did anything. @param {string} key */
function doneBy(key) {
  if (key === '?') {
    openKeySheet()
    return true
  }
  if (key === 'u') return press(named(words.frame.undo))
  if (key === 'r') return press(named(words.frame.redo))
  if (key === 'n') return press(neighbour(1))
  if (key === 'b') return press(neighbour(-1))
  if (key === 'f') return turnFolds()
  if (key === 'w') return goOver()
  if (/^[1-9]$/.test(key)) return press(all('.foot .bar :is(a, button)')[Number(key) - 1])
  return toScreenOf(key)
}

/** What is seen of what a selector finds. @param {string} selector @returns {HTMLElement[]} */
const all = (selector) =>
  /** @type {HTMLElement[]} */ (Array.from(document.querySelectorAll(selector)))
    .filter((element) => element.getClientRects().length > 0)

/** A button at the foot. @param {string} name */
const named = (name) => all('.title-nav button').find(({ textContent }) => textContent?.trim() === name)

/** @param {HTMLElement | undefined} control */
function press(control) {
  control?.click()
  return control !== undefined
}

/** The line after the open one in the list beside it, or the one before; without a list the way on or back at the foot.
 * @param {1 | -1} step */
function neighbour(step) {
  const rows = all('.beside a.row')
  const open = rows.findIndex((row) => row.getAttribute('aria-current') === 'true')
  if (open >= 0) return rows[open + step]
  const ways = all('.foot .bar a')
  return step > 0 ? ways.at(-1) : ways[0]
}

/** All folds of the screen alike. */
function turnFolds() {
  const folds = /** @type {HTMLDetailsElement[]} */ (all('.screen-main .folded'))
  const isAnyFolded = folds.some(({ open }) => !open)
  for (const fold of folds) fold.open = isAnyFolded
  return folds.length > 0
}

/** Between the list and what stands beside it. */
function goOver() {
  const [beside] = all('.beside')
  const [main] = all('.screen-main')
  if (!beside || !main) return false
  if (beside.contains(document.activeElement)) main.focus()
  else (all('.beside a[aria-current="true"]')[0] ?? beside).focus()
  return true
}

/** @param {string} key */
function toScreenOf(key) {
  const [, name] = SCREEN_KEYS.find(([letter]) => letter === key) ?? []
  const { job } = state.route
  if (!name || !job) return false
  go(name === 'jobs' ? toShop(name) : toScreen(job, /** @type {JobScreen} */ (name)))
  return true
}
