// Where each screen was scrolled to. Of the last one it is kept, and put back when the page begins there again.
import { keep, keptOf } from '../kept.js'
import { makeRoom } from './room.js'

const NAME = 'scrolled'
/** So long it must stand still to be kept. */
const PAUSE = 100

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
  const kept = keptOf(NAME)
  if (kept?.address !== address) return
  queueMicrotask(() => {
    makeRoom()
    scroller()?.scrollTo(0, kept.top)
  })
}

const keepScroll = () => keep(NAME, { address: location.hash, top: scroller()?.scrollTop ?? 0 })

addEventListener('scroll', ({ target }) => {
  if (!isBegun || (target !== document && target !== scroller())) return
  clearTimeout(timer)
  timer = setTimeout(keepScroll, PAUSE)
}, { capture: true, passive: true })
