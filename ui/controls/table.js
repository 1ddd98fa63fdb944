// A table that becomes a list of cards where there is no room for columns. The roles are written out, since a table
// laid out otherwise is no table any more to those who hear the page.
import { html } from '../vendor/lit-html/lit-html.js'
import { tied } from '../lengths.js'

/**
 * @typedef {object} Row
 * @property {unknown} head
 * @property {(string | unknown)[]} cells one for each column after the first; empty text is left out of the card
 * @property {string} [mark] a class of the row
 */

/** The first head stands over the heads of the rows. A column with nothing in it is left out.
 * @param {{ label: string, heads: string[], rows: Row[] }} table */
export function table({ label, heads: [first = '', ...others], rows }) {
  const used = others
    .map((head, column) => ({ head, column }))
    .filter(({ column }) => rows.some(({ cells }) => cells[column] !== ''))
  return html`
    <table class="stacked" role="table" aria-label=${label}>
      <thead role="rowgroup">
        <tr role="row">${[first, ...used.map(({ head }) => head)].map((head) =>
          html`<th role="columnheader" scope="col">${head}</th>`)}</tr>
      </thead>
      <tbody role="rowgroup">
        ${rows.map(({ head, cells, mark }) => html`
          <tr role="row" class=${mark ?? ''}>
            <th role="rowheader" scope="row">${head}</th>
            ${used.map(({ head, column }) => cell(head, cells[column]))}
          </tr>`)}
      </tbody>
    </table>`
}

/** @param {string} head @param {unknown} content */
const cell = (head, content) => html`
  <td role="cell" class=${content === '' ? 'empty' : ''} data-head=${head}>${typeof content === 'string'
    ? tied(content)
    : content}</td>`
