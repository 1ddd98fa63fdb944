// What is being entered and not saved yet. It is kept by the form's name, so that neither a way to another screen and
// back, nor a refusal, nor the end of the page loses anything that was typed or picked. A form of a job is called by a
// word, the job, and what of the job it is about.
import { drop, keep, keptNames, keptOf } from '../kept.js'
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

/** Before what is kept of a form's name. */
const KEPT = 'form '

/** @param {string} name */
const keptAs = (name) => KEPT + name

/** Whether something is entered under this name, though its form may not be shown. @param {string} name */
export const hasDraft = (name) => open.has(name) || keptOf(keptAs(name)) !== undefined

/** The form of this name; as long as nothing has been entered it shows what `start` gives.
 * @template Entered @param {string} name @param {() => Entered} start
 * @param {(entered: Entered) => Partial<Entered>} [lasting] what of it outlives the page; all, if not said
 * @returns {Form<Entered>} */
export function formOf(name, start, lasting = (entered) => entered) {
  const isStart = (/** @type {Entered} */ entered) => isSame(lasting(entered), lasting(start()))
  if (!open.has(name)) takeUp(name, start, isStart)
  const { entered, refusal, isFound } = open.get(name) ?? { entered: start(), refusal: '', isFound: false }
  /** A refusal stays until the next try: taken away while one types, it would move the button from under the finger.
   * @param {Partial<Entered>} change @param {string} [why] */
  const note = (change, why = open.get(name)?.refusal ?? '') => {
    const latest = { ...(open.get(name)?.entered ?? entered), ...change }
    open.set(name, { entered: latest, refusal: why, isFound })
    if (isStart(latest)) drop(keptAs(name))
    else keep(keptAs(name), lasting(latest))
    redraw()
  }
  const forget = () => forgetDraft(name)
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

/** @param {string} name */
export function forgetDraft(name) {
  open.delete(name)
  drop(keptAs(name))
  redraw()
}

/** What is entered of a job, on whatever screen: the word, and what of the job it is about; empty for the whole.
 * @param {string} job @returns {{ name: string, word: string, about: string, entered: any }[]} */
export function draftsOf(job) {
  const kept = keptNames().filter((name) => name.startsWith(KEPT)).map((name) => name.slice(KEPT.length))
  return [...new Set([...open.keys(), ...kept])].flatMap((name) => {
    const [word = '', of, ...about] = name.split(' ')
    const entered = open.get(name)?.entered ?? keptOf(keptAs(name))
    return of === job ? [{ name, word, about: about.join(' '), entered }] : []
  })
}

/** Goes on with what was entered before the page was ended, unless the store has it by now.
 * @template Entered @param {string} name @param {() => Entered} start @param {(entered: Entered) => boolean} isStart */
function takeUp(name, start, isStart) {
  const kept = keptOf(keptAs(name))
  if (kept === undefined) return
  const entered = { ...start(), ...kept }
  if (isStart(entered)) drop(keptAs(name))
  else open.set(name, { entered, refusal: '', isFound: true })
}

/** @param {unknown} one @param {unknown} other */
const isSame = (one, other) => JSON.stringify(one) === JSON.stringify(other)
