// What is being entered and not saved yet. It is kept by the form's name, so that a way to another screen and back, or
// a refusal, loses nothing that was typed.
import { redraw } from '../state.js'
import { words } from '../words.js'

/**
 * @template Entered
 * @typedef {object} Form
 * @property {Entered} entered
 * @property {boolean} touched the person has changed something
 * @property {string} refusal why it could not be saved, in a sentence
 * @property {(change: Partial<Entered>) => void} enter
 * @property {(save: (entered: Entered) => Promise<unknown>) => Promise<boolean>} send saves; answers whether it went
 * well
 * @property {() => void} forget throws away what was entered
 */

/** @type {Map<string, { entered: any, refusal: string }>} */
const open = new Map()

/** The form of this name; as long as nothing has been entered it shows what `start` gives.
 * @template Entered @param {string} name @param {() => Entered} start @returns {Form<Entered>} */
export function formOf(name, start) {
  const { entered, refusal } = open.get(name) ?? { entered: start(), refusal: '' }
  /** A refusal stays until the next try: taken away while one types, it would move the button from under the finger.
   * @param {Partial<Entered>} change @param {string} [why] */
  const note = (change, why = open.get(name)?.refusal ?? '') => {
    const latest = open.get(name)?.entered ?? entered
    open.set(name, { entered: { ...latest, ...change }, refusal: why })
    redraw()
  }
  const forget = () => {
    open.delete(name)
    redraw()
  }
  return {
    entered,
    refusal,
    touched: open.has(name),
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
