// Where each screen was scrolled to. Of the last one it is kept, and put back when the page begins there again.
import { keep, keptOf } from '../kept.js'
import { makeRoom } from './room.js'

const NAME = 'scrolled'
/** So long it must stand still to be kept. */
const PAUSE = 100
/** What has words by which it is found again. */
const WORDED = 'h2, h3, summary, legend, label'

/**
 * @typedef {object} Stand where a screen stood: folds above may be closed when it is drawn anew, so that a height alone
 * would lead elsewhere
 * @property {string} address
 * @property {number} top
 * @property {string} words of what stood first in sight
 * @property {number} nth among all of the same words
 * @property {number} below how far it stood below the upper edge
 */

/** By address. @type {Map<string, number>} */
const tops = new Map()
let timer = 0
let isBegun = false

/** With large text everything scrolls together. */
const scroller = () => document.querySelector('html:not(.flowing) .screen-main') ?? document.scrollingElement

/** @param {string} address */
export const noteScroll = (address) => tops.set(address, scroller()?.scrollTop ?? 0)

/** @param {string} address */
export const scrolledTo = (address) => tops.get(address) ?? 0

/** At the first screen alone, once it is drawn with all that it reads: to where it was when the page was ended.
 * @param {string} address */
export function scrollBack(address) {
  if (isBegun) return
  isBegun = true
  /** @type {Stand | undefined} */
  const kept = keptOf(NAME)
  if (kept?.address === address) queueMicrotask(() => standAgain(kept))
}

/** @param {Stand} stand */
function standAgain({ top, words, nth, below }) {
  makeRoom()
  const screen = scroller()
  if (!screen) return
  screen.scrollTop = top
  const first = worded(screen).filter((element) => wordsOf(element) === words)[nth]
  if (first) screen.scrollTop += shownFor(first).getBoundingClientRect().top - edgeOf(screen) - below
}

function keepScroll() {
  const screen = scroller()
  if (!screen) return
  const edge = edgeOf(screen)
  const all = worded(screen)
  const first = all.find((element) => shownFor(element) === element && element.getBoundingClientRect().top >= edge)
  const words = first ? wordsOf(first) : ''
  /** @type {Stand} */
  const stand = {
    address: location.hash,
    top: screen.scrollTop,
    words,
    nth: all.filter((element) => wordsOf(element) === words).findIndex((element) => element === first),
    below: first ? first.getBoundingClientRect().top - edge : 0,
  }
  keep(NAME, stand)
}

/** @param {Element} screen */
const worded = (screen) => [...screen.querySelectorAll(WORDED)]

/** @param {Element} element */
const wordsOf = (element) => element.textContent?.replace(/\s+/g, ' ').trim() ?? ''

/** The upper edge of what is in sight. @param {Element} screen */
const edgeOf = (screen) => (screen === document.scrollingElement ? 0 : screen.getBoundingClientRect().top)

/** Itself, or the heading under which it is folded away. @param {Element} element @returns {Element} */
function shownFor(element) {
  const around = element.matches('summary') ? element.parentElement?.parentElement : element
  const heading = around?.closest('details:not([open])')?.querySelector('summary')
  return heading ? shownFor(heading) : element
}

addEventListener('scroll', ({ target }) => {
  if (!isBegun || (target !== document && target !== scroller())) return
  clearTimeout(timer)
  timer = setTimeout(keepScroll, PAUSE)
}, { capture: true, passive: true })
