// A line or a box of text that saves itself.
import { html } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { draftOr, settle, takeUp, type } from '../drafts.js'
import { moveOn } from './move-on.js'

/**
 * @typedef {object} Field
 * @property {string} key names the field among all drafts
 * @property {string} label
 * @property {string} saved the text as the store has it
 * @property {(text: string) => Promise<boolean>} save
 * @property {boolean} [long] a box of several lines
 * @property {keyof typeof KEYS} [kind]
 * @property {string} [hint]
 */

/** Which keys the system brings up. A mail address stays text to the browser, which would else rewrite it. */
const KEYS = {
  text: { type: 'text', mode: 'text', capitals: 'sentences', spelling: 'true' },
  name: { type: 'text', mode: 'text', capitals: 'words', spelling: 'false' },
  number: { type: 'text', mode: 'text', capitals: 'off', spelling: 'false' },
  telephone: { type: 'tel', mode: 'tel', capitals: 'off', spelling: 'false' },
  mail: { type: 'text', mode: 'email', capitals: 'off', spelling: 'false' },
}

/** Nothing is filled in by the system: it would offer the mechanic's own name and number for the customer's.
 * @param {Field} field */
export function field({ key, label, saved, save, long, kind = 'text', hint }) {
  takeUp(key, saved, save)
  /** @param {InputEvent} event */
  const onInput = (event) =>
    type(key, /** @type {HTMLInputElement | HTMLTextAreaElement} */ (event.target).value, save)
  const onLeave = () => settle(key)
  const text = live(draftOr(key, saved))
  const keys = KEYS[kind]
  return html`
    <label class="field">
      <span class="field-label">${label}</span>
      ${long
        ? html`<textarea rows="3" autocomplete="off" .value=${text} @input=${onInput} @blur=${onLeave}></textarea>`
        : html`<input type=${keys.type} inputmode=${keys.mode} autocapitalize=${keys.capitals}
          spellcheck=${keys.spelling} autocomplete="off" enterkeyhint="next" .value=${text} @input=${onInput}
          @change=${onLeave} @blur=${onLeave} @keydown=${moveOn}>`}
      ${hint ? html`<span class="hint">${hint}</span>` : ''}
    </label>`
}
