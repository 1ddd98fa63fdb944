// One list as it leaves the shop: printed, as text for a message, as a table.
/** @import { WorkList } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { getText, surroundings } from '../backend.js'
import { folded } from '../controls/folded.js'
import { copyFrom, leave, openPaper, savePaper, sharePaper } from '../papers.js'
import { toScreen } from '../route.js'
import { redraw, state } from '../state.js'
import { words } from '../words.js'

const text = words.lists

/** The text that was asked for last. It stands on the screen too, so that it can be copied by hand. */
let asked = { of: '', list: /** @type {WorkList | null} */ (null), content: '' }

/** @param {string} job @param {WorkList} list */
export function papers(job, list) {
  const selection = { list: list.kind }
  const copy = () =>
    leave(async () => {
      asked = { of: job, list, content: await getText(job, 'list-text', selection) }
      redraw()
      queueMicrotask(() => copyFrom('textarea.list-text'))
      return ''
    })
  // An old text must not be taken for the list as it is now.
  const isFresh = asked.of === job && asked.list === list
  return folded({
    name: 'list papers',
    isOpen: state.wide,
    look: 'list-papers',
    summary: text.papers,
    body: html`
      <div class="hand-over-ways">
        ${surroundings.sharesFiles
          ? html`<button type="button"
            @click=${() => sharePaper(job, 'list-pdf', `${list.title}.pdf`, selection)}>${text.sharePdf}</button>`
          : ''}
        <button type="button" @click=${() => savePaper(job, 'list-pdf', selection)}>${text.savePdf}</button>
        ${surroundings.opensDocuments
          ? html`<button type="button" @click=${() => openPaper(job, 'list-pdf', selection)}>${text.openPdf}</button>`
          : ''}
        <button type="button" @click=${copy}>${text.copy}</button>
        <button type="button" @click=${() => savePaper(job, 'list-csv', selection)}>${text.saveCsv}</button>
        ${list.kind === 'machine-shop'
          ? html`<a class="button" href=${toScreen(job, 'labels', list.kind)}>${words.screens.labels}</a>`
          : ''}
      </div>
      ${isFresh
        ? html`<textarea class="report-text list-text" readonly rows="10" aria-label=${text.asText}
          .value=${asked.content}></textarea>`
        : ''}`,
  })
}
