// A whole number with a button for one less and one for one more.
import { html } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { words } from '../words.js'

/** @param {{ label: string, value: number, hint?: string, set: (value: number) => void }} count */
export function count({ label, value, hint, set }) {
  /** With each key, so that nothing typed is lost with the page. @param {Event} event */
  const onInput = (event) => {
    const typed = /** @type {HTMLInputElement} */ (event.target).valueAsNumber
    // An emptied field says nothing; what is impossible is refused by the backend with its reason.
    if (Number.isFinite(typed)) set(Math.min(255, Math.max(0, Math.round(typed))))
  }
  const less = () => value > 0 && set(value - 1)
  return html`
    <div class="count">
      <label class="field">
        <span class="field-label">${label}</span>
        <input type="number" inputmode="numeric" autocomplete="off" min="0" max="255"
          .value=${live(String(value))} @input=${onInput}>
      </label>
      <button type="button" aria-label=${words.controls.oneLess(label)} aria-disabled=${value > 0 ? 'false' : 'true'}
        @click=${less}>−</button>
      <button type="button" aria-label=${words.controls.oneMore(label)} @click=${() => set(value + 1)}>+</button>
      ${hint ? html`<p class="hint">${hint}</p>` : ''}
    </div>`
}
