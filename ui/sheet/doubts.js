// What is hard to believe on the sheet: printed manuals have misprints.
import { html } from '../vendor/lit-html/lit-html.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

/** @param {string[]} doubts */
export const doubts = (doubts) => doubts.length === 0 ? '' : html`
  <section class="warnings" aria-labelledby="sheet-doubts">
    <h2 id="sheet-doubts">${words.sheet.doubts}</h2>
    <ul>${doubts.map((doubt) => html`<li>${capitalised(doubt)}</li>`)}</ul>
  </section>`
