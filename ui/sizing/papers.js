// The sheet of sizes as it leaves the shop.
import { html } from '../vendor/lit-html/lit-html.js'
import { surroundings } from '../backend.js'
import { openPaper, savePaper } from '../papers.js'
import { words } from '../words.js'

const text = words.sizing

/** @param {string} job */
export const papers = (job) => html`
  <button type="button" @click=${() => savePaper(job, 'sizes-pdf')}>${text.savePdf}</button>
  ${surroundings.opensDocuments
    ? html`<button type="button" @click=${() => openPaper(job, 'sizes-pdf')}>${text.openPdf}</button>`
    : ''}
  <button type="button" @click=${() => savePaper(job, 'sizes-csv')}>${text.saveCsv}</button>`
