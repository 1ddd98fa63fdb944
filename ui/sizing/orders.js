// What to order in which size. Nothing is ordered on guesses: a line is held until what it rests on exists.
/** @import { OrderLine } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { orderStateWords } from '../catalogue.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.sizing

/** @param {OrderLine[]} lines */
export const orders = (lines) => lines.length === 0 ? '' : html`
  <section aria-labelledby="sizes-orders">
    <h2 id="sizes-orders">${text.orders}</h2>
    <ul class="orders">${lines.map(line)}</ul>
  </section>`

/** @param {OrderLine} order */
const line = ({ what, size_shown, quantity, state, waits_for, grades }) => html`
  <li class=${`order order-${state}`}>
    <p>
      <span class=${`mark-${state}`}>${orderStateWords(state)}</span>
      <strong>${quantity} × ${what}</strong>, ${size_shown}
    </p>
    ${grades.map(({ grade, labels }) => html`<p>${text.gradeFor(grade, labels.join(', '))}</p>`)}
    ${waits_for.length === 0 ? '' : html`
      <details>
        <summary>${text.waits(waits_for.length)}</summary>
        <ul>${waits_for.map((sentence) => html`<li>${capitalised(sentence)}</li>`)}</ul>
      </details>`}
  </li>`
