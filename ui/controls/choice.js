// One of a few: boxes that a thumb hits.
import { html } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'

/**
 * @template {string | null} Value
 * @typedef {object} Choice
 * @property {string} name unique on the screen
 * @property {string} legend
 * @property {readonly { value: Value, label: string }[]} options
 * @property {Value | undefined} value what is chosen
 * @property {(value: Value) => void} choose
 */

/** @template {string | null} Value @param {Choice<Value>} choice */
export function choice({ name, legend, options, value, choose }) {
  return html`
    <fieldset class="choice">
      <legend>${legend}</legend>
      <div class="choice-options">
        ${options.map((option) => html`
          <label class="choice-option">
            <input type="radio" name=${name} .checked=${live(option.value === value)}
              @change=${() => choose(option.value)}>
            <span>${option.label}</span>
          </label>`)}
      </div>
    </fieldset>`
}

/** The options of a table of labels. @template {string} Value @param {Record<Value, string>} labels */
export const optionsOf = (labels) =>
  /** @type {[Value, string][]} */ (Object.entries(labels)).map(([value, label]) => ({ value, label }))
