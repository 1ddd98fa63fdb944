// What to order in which size. Nothing is ordered on guesses: a line is held until what it rests on exists.
/** @import { OrderLine } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { orderStateWords } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.sizing

/** @param {OrderLine[]} lines */
export const orders = (lines) => lines.length === 0 ? '' : html`
  <section aria-labelledby="sizes-orders">
    <h2 id="sizes-orders">${text.orders}</h2>
    <ul class="orders">${lines.map(line)}</ul>
  </section>`

/** What it waits for unfolds under the line itself. @param {OrderLine} order @param {number} nth */
const line = (order, nth) => html`
  <li class=${`order order-${order.state}`}>
    ${order.waits_for.length === 0 ? html`<p>${told(order)}</p>` : folded({
      name: `size order ${nth} ${order.what}`,
      summary: html`<span>${told(order)}</span> <span class="fold-facts">${text.waits(order.waits_for.length)}</span>`,
      body: html`<ul>${order.waits_for.map((sentence) => html`<li>${capitalised(sentence)}</li>`)}</ul>`,
    })}
    ${order.grades.map(({ grade, labels }) => html`<p>${text.gradeFor(grade, labels.join(', '))}</p>`)}
  </li>`

/** @param {OrderLine} order */
const told = ({ what, size_shown, quantity, state }) => html`
  <span class=${`mark-${state}`}>${orderStateWords(state)}</span>
  <strong>${quantity} × ${what}</strong>, ${size_shown}`
