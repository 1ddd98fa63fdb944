// Labels to be printed: of which pieces, on what, and at which field a begun sheet goes on.
/** @import { JobView, LabelStock } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { surroundings } from '../backend.js'
import { choice, optionsOf } from '../controls/choice.js'
import { keep, keptOf } from '../kept.js'
import { openPaper, savePaper, sharePaper } from '../papers.js'
import { swap, toScreen } from '../route.js'
import { redraw, state } from '../state.js'
import { words } from '../words.js'
import { asked, piecesOf, WHICH } from './pieces.js'

const text = words.labels

/** Fields of a sheet. */
const FIELDS = 24
/** What the shop printed on last, and the field at which it goes on there. */
const KEPT = 'labels'

/** @type {LabelStock} */
let stock = 'sheet'
/** The first field that is still free. */
let field = 1
/** Where the labels that were printed last ended; 0 where no sheet is begun. */
let ended = 0

export function arriveAtLabels() {
  const kept = keptOf(KEPT) ?? { stock: 'sheet', field: 1 }
  stock = kept.stock
  field = kept.field
  ended = field - 1
}

/** @param {JobView} view */
export function labels(view) {
  const { job } = view
  const wanted = asked(state.route.subject)
  const pieces = piecesOf(view, wanted)
  const selection = stock === 'sheet' ? { stock, pieces: wanted, field } : { stock, pieces: wanted }
  const paper = { document: /** @type {const} */ ('labels-pdf'), selection }
  const title = words.screens.labels
  const which = typeof wanted === 'object'
    ? html`<a class="button" href=${toScreen(job, 'labels')}>${text.others}</a>`
    : choice({
      name: 'pieces',
      legend: text.which,
      options: WHICH.map((value) => ({ value, label: text.counted(text.pieces[value], piecesOf(view, value).length) })),
      value: wanted,
      choose: (value) => swap(toScreen(job, 'labels', value)),
    })
  if (pieces.length === 0) {
    return { title, body: html`<p role="status">${text.none}</p>${which}` }
  }
  /** A second print of the same begins at the same field; the next labels go on behind it.
   * @param {Promise<boolean>} leaving */
  const printed = async (leaving) => {
    if (!(await leaving)) return
    const next = stock === 'sheet' ? ((field - 1 + pieces.length) % FIELDS) + 1 : keptOf(KEPT)?.field ?? 1
    keep(KEPT, { stock, field: next })
  }
  return {
    title,
    paper,
    body: html`
      <p role="status">${text.told(pieces.map(({ name }) => name), stock === 'sheet' ? sheets(pieces.length) : 0)}</p>
      ${typeof wanted === 'object' ? '' : which}
      ${choice({
        name: 'stock',
        legend: text.stock,
        options: optionsOf(text.stocks),
        value: stock,
        choose: (/** @type {LabelStock} */ chosen) => {
          stock = chosen
          redraw()
        },
      })}
      ${stock === 'sheet' ? firstField() : ''}
      ${surroundings.sharesFiles || surroundings.opensDocuments
        ? html`<div class="hand-over-ways">
          ${surroundings.sharesFiles
            ? html`<button type="button"
              @click=${() => printed(sharePaper(job, 'labels-pdf', `${title}.pdf`, selection))}>${text.share}</button>`
            : ''}
          ${surroundings.opensDocuments
            ? html`<button type="button"
              @click=${() => printed(openPaper(job, 'labels-pdf', selection))}>${text.open}</button>`
            : ''}
        </div>`
        : ''}
      ${typeof wanted === 'object' ? which : ''}`,
    bar: html`
      <div class="bar">
        <button type="button" class="primary"
          @click=${() => printed(savePaper(job, 'labels-pdf', selection))}>${text.save}</button>
      </div>`,
  }
}

/** @param {number} count */
const sheets = (count) => Math.ceil((field - 1 + count) / FIELDS)

/** The fields as they lie on the sheet. What is before the first free one is used up. */
const firstField = () => html`
  <div class="sheet-fields">
    ${choice({
      name: 'field',
      legend: text.field,
      options: Array.from({ length: FIELDS }, (_, nth) => ({ value: `${nth + 1}`, label: `${nth + 1}` })),
      value: `${field}`,
      choose: (chosen) => {
        field = Number(chosen)
        redraw()
      },
    })}
    <p class="hint">${ended > 0 ? text.ended(ended) : text.fieldHint}</p>
  </div>`
