// The sheet that lists the keys, and whether they work.
import { html } from '../vendor/lit-html/lit-html.js'
import { tick } from '../controls/input.js'
import { redraw } from '../state.js'
import { words } from '../words.js'
import { SCREEN_KEYS } from './screen-keys.js'

const text = words.keys

/** Under which name this device remembers that the keys are off. */
const KEPT_AS = 'keys-off'

/** Letters alone get in the way of those who steer by speech: they can be switched off. */
export const keysWork = () => kept() === null

/** A web view may keep nothing for a page; then they work until it is closed. */
let isOff = false

function kept() {
  try {
    return localStorage.getItem(KEPT_AS)
  } catch {
    return isOff ? '' : null
  }
}

/** @param {boolean} work */
function setWork(work) {
  isOff = !work
  try {
    if (work) localStorage.removeItem(KEPT_AS)
    else localStorage.setItem(KEPT_AS, '')
  } catch (failure) {
    console.error(failure)
  }
  redraw()
}

const dialog = () => /** @type {HTMLDialogElement | null} */ (document.querySelector('.key-sheet'))

export const openKeySheet = () => dialog()?.showModal()

export const keySheet = () => html`
  <dialog class="key-sheet" aria-labelledby="key-sheet">
    <h2 id="key-sheet">${text.title}</h2>
    ${tick({ label: text.on, hint: text.onHint, checked: keysWork(), enter: setWork })}
    <p>${text.intro}</p>
    <dl class="key-list">
      ${SCREEN_KEYS.map(([key, name]) => line(key.toUpperCase(), words.screens[name]))}
      ${line('U', text.undo)}${line('R', text.redo)}
      ${line('N', text.next)}${line('B', text.before)}
      ${line('1 – 9', text.bar)}${line('F', text.folds)}${line('W', text.over)}
      ${line('?', text.sheet)}${line('Ctrl P', text.print)}
    </dl>
    <form method="dialog"><button class="primary wide">${words.frame.close}</button></form>
  </dialog>`

/** @param {string} key @param {string} what */
const line = (key, what) => html`<div><dt><kbd>${key}</kbd></dt><dd>${what}</dd></div>`
