// The sheet of sizes as it leaves the shop.
/** @import { Document } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { openDocument, saveDocument, surroundings } from '../backend.js'
import { settled } from '../edits/queue.js'
import { attempt, state } from '../state.js'
import { words } from '../words.js'

const text = words.sizes

/** @param {string} job */
export function papers(job) {
  /** @param {Document} document */
  const save = (document) => leave(async () => words.handOver.savedAs(await saveDocument(job, document)))
  const open = () => leave(async () => { await openDocument(job, 'sizes-pdf'); return '' })
  return html`
    <button type="button" @click=${() => save('sizes-pdf')}>${text.savePdf}</button>
    ${surroundings.opensDocuments ? html`<button type="button" @click=${open}>${text.openPdf}</button>` : ''}
    <button type="button" @click=${() => save('sizes-csv')}>${text.saveCsv}</button>`
}

/** Documents hold what is saved, so what is on its way goes first. @param {() => Promise<string>} way */
export const leave = (way) =>
  attempt(async () => {
    await settled()
    state.notice = await way()
  })
