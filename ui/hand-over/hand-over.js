// What leaves the shop: the report as PDF and as text, the job as an archive.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { openDocument, saveArchive, saveDocument, surroundings } from '../backend.js'
import { catalogue } from '../catalogue.js'
import { leave, papers } from '../sizes/papers.js'
import { attempt, state } from '../state.js'
import { words } from '../words.js'

const text = words.handOver

/** @param {JobView} view */
export const handOver = (view) => ({
  title: words.screens['hand-over'],
  body: html`
    <div class="hand-over-ways">
      <button type="button" class="primary" @click=${() => leave(async () => text.savedAs(await saveDocument(view.job, 'report-pdf')))}>${text.save}</button>
      ${surroundings.opensDocuments
        ? html`<button type="button" @click=${() => leave(async () => { await openDocument(view.job, 'report-pdf'); return '' })}>${text.open}</button>`
        : ''}
      <button type="button" ?disabled=${!state.report} @click=${copy}>${text.copy}</button>
      ${papers(view.job)}
      <button type="button" @click=${() => leave(async () => text.savedAs(await saveArchive(view.job)))}>${text.archive}</button>
    </div>
    <section aria-labelledby="hand-over-cautions">
      <h2 id="hand-over-cautions">${text.cautions}</h2>
      <ul>${catalogue().cautions.map((caution) => html`<li>${caution}</li>`)}</ul>
    </section>
    <section aria-labelledby="hand-over-text">
      <h2 id="hand-over-text">${text.text}</h2>
      <textarea class="report-text" readonly rows="24" aria-labelledby="hand-over-text"
        .value=${state.report ?? words.frame.loading}></textarea>
    </section>`,
})

const copy = () =>
  attempt(async () => {
    state.notice = (await onClipboard(state.report ?? '')) ? text.copied : text.notCopied
  })

/** Some systems refuse the clipboard to a page; then the text is marked for the person. @param {string} report */
async function onClipboard(report) {
  try {
    await navigator.clipboard.writeText(report)
    return true
  } catch {
    const box = document.querySelector('textarea.report-text')
    if (!(box instanceof HTMLTextAreaElement)) return false
    box.focus()
    box.select()
    return document.execCommand('copy')
  }
}
