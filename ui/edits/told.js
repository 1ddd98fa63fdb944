// What was just done, told at the foot of the screen: what was taken back or taken off, with the way to it and back.
// It stands on one screen until something else is done.
/** @import { Change, JobView, Said } from '../types/api.d.ts' */
import { toPart, toScreen } from '../route.js'
import { redraw, state } from '../state.js'
import { words } from '../words.js'
import { removes } from './removes.js'
import { SHOWN_ON } from './shown-on.js'

const text = words.told

/**
 * @typedef {object} Told
 * @property {string} at the address at which it stands
 * @property {string} sentence
 * @property {() => void} [takeBack] takes back just that
 * @property {string} [place] the address of what it is about, if that is another
 * @property {string} [from] the address from which the person came to see it
 */

/** @type {Told | null} */
let told = null

/** What is told on the screen where the person is. */
export const toldHere = () => (told?.at === location.hash ? told : null)

/** Tells something at an address; at no other.
 * @param {Told} what */
export function tell(what) {
  told = what
  redraw()
}

/** What was told no longer matters: something else has begun. */
export function forgetTold() {
  told = null
}

/** The same is told where its way leads, with the way back. @param {Told} what */
export function tellThere({ sentence, place, from }) {
  const here = location.hash
  if (place) told = { at: place, sentence, from: here }
  else if (from) told = { at: from, sentence, place: here }
}

/** After an edit: what an undo or a redo did, and what was taken off.
 * @param {JobView | null} before @param {Change[]} changes @param {JobView} view what came of them */
export function tellOf(before, changes, view) {
  const last = changes.at(-1)
  if (!last) return
  if (last.do === 'undo') {
    // Of several taken back at once, whoever took them back tells.
    if (changes.length > 1) return
    const isRedo = before !== null && before.redo === last.edit
    if (isRedo) return before.redo_said && tellEdit(view.job, before.redo_said, text.redone)
    // An undo that was itself undone before is no longer the latest, and tells nothing of itself.
    const isFresh = view.redo !== null && view.redo !== before?.redo
    return isFresh && view.redo_said ? tellEdit(view.job, view.redo_said, text.undone) : undefined
  }
  if (view.last_said && removes(last, before)) tellEdit(view.job, view.last_said, (sentence) => sentence)
}

/** @param {string} job @param {Said} said @param {(sentence: string) => string} how */
function tellEdit(job, { sentence, does, part }, how) {
  if (state.route.job !== job) return
  const screen = SHOWN_ON[does]
  const isHere = part ? state.route.part === part : state.route.screen === screen
  const place = isHere ? undefined : part ? toPart(job, part) : screen && toScreen(job, screen)
  tell({ at: location.hash, sentence: how(sentence), place })
}
