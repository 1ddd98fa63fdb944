// A table that becomes a list of cards where there is no room for columns. The roles are written out, since a table laid
// out otherwise is no table any more to those who hear the page.
import { html } from '../vendor/lit-html/lit-html.js'

/**
 * @typedef {object} Row
 * @property {unknown} head
 * @property {(string | unknown)[]} cells one for each column after the first; empty text is left out of the card
 * @property {string} [mark] a class of the row
 */

/** @param {{ label?: string, heads: string[], rows: Row[] }} table the first head stands over the heads of the rows */
export const table = ({ label, heads, rows }) => html`
  <table class="stacked" role="table" aria-label=${label ?? heads[0] ?? ''}>
    <thead role="rowgroup">
      <tr role="row">${heads.map((head) => html`<th role="columnheader" scope="col">${head}</th>`)}</tr>
    </thead>
    <tbody role="rowgroup">
      ${rows.map(({ head, cells, mark }) => html`
        <tr role="row" class=${mark ?? ''}>
          <th role="rowheader" scope="row">${head}</th>
          ${cells.map((cell, column) => html`<td role="cell" class=${cell === '' ? 'empty' : ''} data-head=${heads[column + 1] ?? ''}>${cell}</td>`)}
        </tr>`)}
    </tbody>
  </table>`
