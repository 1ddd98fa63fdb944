// The sheet that lists the keys, with the way to the setting that switches them off.
import { html } from '../vendor/lit-html/lit-html.js'
import { toShop } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { SCREEN_KEYS } from './screen-keys.js'

const text = words.keys

/** Letters alone get in the way of those who steer by speech: the settings can switch them off. */
export const keysWork = () => state.settings.keys

const dialog = () => /** @type {HTMLDialogElement | null} */ (document.querySelector('.key-sheet'))

export const openKeySheet = () => dialog()?.showModal()

const close = () => dialog()?.close()

export const keySheet = () => html`
  <dialog class="key-sheet" aria-labelledby="key-sheet">
    <h2 id="key-sheet">${text.title}</h2>
    <a class="button" href=${toShop('settings')} @click=${close}>${keysWork() ? text.switchOff : text.switchOn}</a>
    <p>${keysWork() ? text.intro : text.off}</p>
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
