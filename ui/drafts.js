// Text that is being typed. It is kept until the store has it: saved a moment after the last key, when the field is
// left, and when the page goes out of sight. What the page could not save any more it saves when it is back.

import { drop, keep, keptNames, keptOf } from './kept.js'
import { redraw } from './state.js'

/**
 * @typedef {object} Draft
 * @property {string} text
 * @property {(text: string) => Promise<boolean>} save
 * @property {number} timer
 * @property {boolean} sending
 * @property {boolean} isRefused
 */

/** @type {Map<string, Draft>} */
const drafts = new Map()
const PAUSE = 600

/** Before what is kept of a field's key. */
const KEPT = 'text '

/** @param {string} key */
const nameOf = (key) => KEPT + key

/** What to show in a field: the unsaved text if there is one. @param {string} key @param {string} saved */
export const draftOr = (key, saved) => drafts.get(key)?.text ?? saved

/** Whether something typed is still to be saved. */
export const areWaiting = () => [...drafts.values()].some(({ isRefused }) => !isRefused)

/** Takes note of typed text. @param {string} key @param {string} text @param {Draft['save']} save */
export function type(key, text, save) {
  clearTimeout(drafts.get(key)?.timer)
  drafts.set(key, { text, save, timer: setTimeout(() => settle(key), PAUSE), sending: false, isRefused: false })
  keep(nameOf(key), text)
  redraw()
}

/** Goes on with what was typed before the page was ended.
 * @param {string} key @param {string} saved @param {Draft['save']} save */
export function takeUp(key, saved, save) {
  if (drafts.has(key)) return
  const text = keptOf(nameOf(key))
  if (typeof text !== 'string') return
  if (text === saved) drop(nameOf(key))
  else type(key, text, save)
}

/** Saves one field now. @param {string} key */
export async function settle(key) {
  const draft = drafts.get(key)
  if (!draft || draft.sending) return
  clearTimeout(draft.timer)
  draft.sending = true
  const isSaved = await draft.save(draft.text)
  draft.sending = false
  draft.isRefused = !isSaved
  // Typed on meanwhile, or refused: then the text stays a draft.
  if (isSaved && drafts.get(key) === draft) {
    drafts.delete(key)
    drop(nameOf(key))
  }
  redraw()
}

/** Drops what was typed where nothing is any more. @param {(key: string) => boolean} isGone */
export const dropTexts = (isGone) =>
  keptNames()
    .filter((name) => name.startsWith(KEPT) && isGone(name.slice(KEPT.length)))
    .forEach((name) => {
      drafts.delete(name.slice(KEPT.length))
      drop(name)
    })

/** Saves everything now. */
export const settleAll = () => [...drafts.keys()].forEach(settle)

document.addEventListener('visibilitychange', () => document.hidden && settleAll())
addEventListener('pagehide', settleAll)
