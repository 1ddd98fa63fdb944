// Finds jobs while one types, by anything that was typed into them.
import { html } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { words } from '../words.js'

/** So many are overlooked at a glance. */
const HANDFUL = 6

/** @param {{ all: number, found: number, asked: string, ask: (typed: string) => void }} of */
export function search({ all, found, asked, ask }) {
  if (all <= HANDFUL) return ''
  return html`
    <div role="search" class="job-search">
      <label class="field">
        <span class="field-label">${words.jobs.search}</span>
        <input type="search" autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="search"
          .value=${live(asked)}
          @input=${(/** @type {InputEvent} */ event) =>
            ask(/** @type {HTMLInputElement} */ (event.target).value)}>
      </label>
      <p role="status" class="hint">${asked.trim() ? words.jobs.foundOf(found, all) : ''}</p>
    </div>`
}
