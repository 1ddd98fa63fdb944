// A line or a box of text that saves itself.
import { html } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { draftOr, settle, type } from '../drafts.js'

/**
 * @typedef {object} Field
 * @property {string} key names the field among all drafts
 * @property {string} label
 * @property {string} saved the text as the store has it
 * @property {(text: string) => Promise<boolean>} save
 * @property {boolean} [long] a box of several lines
 * @property {string} [hint]
 */

/** @param {Field} field */
export function field({ key, label, saved, save, long, hint }) {
  /** @param {InputEvent} event */
  const onInput = (event) =>
    type(key, /** @type {HTMLInputElement | HTMLTextAreaElement} */ (event.target).value, save)
  const onLeave = () => settle(key)
  const text = live(draftOr(key, saved))
  return html`
    <label class="field">
      <span class="field-label">${label}</span>
      ${long
        ? html`<textarea rows="3" autocomplete="off" .value=${text} @input=${onInput} @blur=${onLeave}></textarea>`
        : html`<input type="text" autocomplete="off" .value=${text} @input=${onInput} @change=${onLeave}
          @blur=${onLeave}>`}
      ${hint ? html`<span class="hint">${hint}</span>` : ''}
    </label>`
}
