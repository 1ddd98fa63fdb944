// What is being entered and not saved yet. It is kept by the form's name, so that a way to another screen and back, or
// a refusal, loses nothing that was typed; where the form asks for it, it outlives the page too.
import { drop, keep, keptOf } from '../kept.js'
import { redraw } from '../state.js'
import { words } from '../words.js'

/**
 * @template Entered
 * @typedef {object} Form
 * @property {Entered} entered
 * @property {boolean} touched the person has changed something
 * @property {boolean} isFound it was entered before the page was ended
 * @property {string} refusal why it could not be saved, in a sentence
 * @property {(change: Partial<Entered>) => void} enter
 * @property {(save: (entered: Entered) => Promise<unknown>) => Promise<boolean>} send saves; answers whether it went
 * well
 * @property {() => void} forget throws away what was entered
 */

/** @type {Map<string, { entered: any, refusal: string, isFound: boolean }>} */
const open = new Map()

/** What was found when its form was first drawn. @type {Set<string>} */
const found = new Set()

/** Whether something was entered under this name before the page was ended; it stays so, that a form which is unfolded
 * for it does not fold away once it is saved. @param {string} name */
export const wasFound = (name) => found.has(name) || (!open.has(name) && hasDraft(name))

/** Whether something is entered under this name, though its form may not be shown. @param {string} name */
export const hasDraft = (name) => open.has(name) || keptOf(keptAs(name)) !== undefined

/** @param {string} name */
const keptAs = (name) => `form ${name}`

/** The form of this name; as long as nothing has been entered it shows what `start` gives.
 * @template Entered @param {string} name @param {() => Entered} start
 * @param {(entered: Entered) => Partial<Entered>} [lasting] what of it outlives the page; nothing, if not said
 * @returns {Form<Entered>} */
export function formOf(name, start, lasting) {
  if (lasting && !open.has(name)) takeUp(name, start)
  const { entered, refusal, isFound } = open.get(name) ?? { entered: start(), refusal: '', isFound: false }
  /** A refusal stays until the next try: taken away while one types, it would move the button from under the finger.
   * @param {Partial<Entered>} change @param {string} [why] */
  const note = (change, why = open.get(name)?.refusal ?? '') => {
    const latest = { ...(open.get(name)?.entered ?? entered), ...change }
    open.set(name, { entered: latest, refusal: why, isFound })
    if (lasting) keep(keptAs(name), lasting(latest))
    redraw()
  }
  const forget = () => {
    open.delete(name)
    if (lasting) drop(keptAs(name))
    redraw()
  }
  return {
    entered,
    refusal,
    touched: open.has(name),
    isFound,
    enter: (change) => note(change),
    forget,
    send: async (save) => {
      note({}, '')
      try {
        await save(open.get(name)?.entered ?? entered)
        forget()
        return true
      } catch (failure) {
        note({}, failure instanceof Error ? failure.message : words.errors.broke)
        queueMicrotask(() =>
          document.querySelector('.entry .refusal:not(:empty)')?.scrollIntoView({ block: 'nearest' }))
        return false
      }
    },
  }
}

/** @param {string} name @param {() => any} start */
function takeUp(name, start) {
  const kept = keptOf(keptAs(name))
  if (kept === undefined) return
  found.add(name)
  open.set(name, { entered: { ...start(), ...kept }, refusal: '', isFound: true })
}
