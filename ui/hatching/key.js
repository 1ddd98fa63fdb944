// What the hatchings mean.
import { html } from '../vendor/lit-html/lit-html.js'
import { hatching } from '../plan/symbols.js'
import { words } from '../words.js'

const GRADES = [1, 2, 3, 4]

export const key = () => html`
  <section class="key" aria-labelledby="key">
    <h2 id="key">${words.plan.key}</h2>
    <ul>
      <li>${swatch(null, 'not-looked')} ${words.plan.states['not-looked']}</li>
      <li>${swatch(null, 'along')} ${words.plan.states.along}</li>
      <li>${swatch(null)} ${words.plan.states.clean}</li>
      ${GRADES.map((grade) => html`<li>${swatch(grade)} ${words.plan.grade(grade)}</li>`)}
    </ul>
  </section>`

/** A small field with a grade's hatching. @param {number | null} grade @param {string} [seen] */
export const swatch = (grade, seen = '') => html`
  <svg class=${`swatch ${seen}`} viewBox="0 0 32 20" aria-hidden="true" focusable="false">
    <rect class="symbol-shape" x="1.5" y="1.5" width="29" height="17" fill=${hatching(grade)}/>
  </svg>`
