// What leaves the shop: the report, the other papers, the job as an archive; and the end of the job.
/** @import { Extent, JobView, PaperSize, Purpose } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { getText, saveToGiveAway, shareArchive, shareText, surroundings } from '../backend.js'
import { choice, optionsOf } from '../controls/choice.js'
import { folded } from '../controls/folded.js'
import { copyFrom, leave, openPaper, savePaper, saveWholeJob, shareOther, sharePaper } from '../papers.js'
import { toScreen } from '../route.js'
import { keepSettings } from '../settings/settings.js'
import { redraw, state } from '../state.js'
import { words } from '../words.js'
import { ending } from './ending.js'

const text = words.handOver

/** How much of the report is handed over. @type {Extent} */
let extent = 'short'
/** What it is handed over for. @type {Purpose} */
let purpose = 'mail'
/** The message to the customer, as it was read last. @type {string | null} */
let message = null

export const forgetMessage = () => {
  message = null
}

/** @param {string} job */
export async function readMessage(job) {
  message = await getText(job, 'customers-text')
}

/** @param {JobView} view */
export const handOver = (view) => ({
  title: words.screens['hand-over'],
  paper: { document: /** @type {const} */ ('report-pdf'), selection: { extent, purpose } },
  body: html`
    ${customersPage(view)}
    ${report(view.job)}
    ${folded({
      name: 'hand-over others',
      isOpen: state.wide,
      summary: text.others,
      body: html`<div class="hand-over-ways">
        <button type="button" @click=${() => savePaper(view.job, 'machine-shop-pdf')}>${text.machineShopPdf}</button>
        <button type="button" @click=${() => savePaper(view.job, 'parts-counter-pdf')}>${text.partsCounterPdf}</button>
        ${view.strip_down.ordered || view.prices.strip_down
          ? html`<button type="button"
            @click=${() => savePaper(view.job, 'strip-down-order-pdf')}>${words.stripDown.pdf}</button>`
          : ''}
        <button type="button" @click=${() => savePaper(view.job, 'evidence-pdf')}>${text.evidencePdf}</button>
        <button type="button" @click=${() => savePaper(view.job, 'sizes-pdf')}>${text.sizesPdf}</button>
        <button type="button" @click=${() => savePaper(view.job, 'sizes-csv')}>${text.sizesCsv}</button>
        <a class="button" href=${toScreen(view.job, 'labels')}>${words.screens.labels}</a>
        ${surroundings.phone.share
          ? html`<button type="button" @click=${() => shareOther((way) =>
            shareArchive(view.job, words.app, way, true))}>${text.shareArchive}</button>
            <button type="button" @click=${() => shareOther((way) =>
            shareArchive(view.job, words.app, way, false))}>${text.shareOwn}</button>`
          : ''}
        <button type="button" @click=${() => saveWholeJob(view.job)}>${text.archive}</button>
        <button type="button" @click=${() => leave(async (way) =>
          text.savedAs(await saveToGiveAway(view.job, way)))}>${text.giveAway}</button>
        <p class="hint">${text.giveAwayHint}</p>
      </div>`,
    })}
    ${ending(view)}`,
})

/** The page on which the customer decides, in the form in which they read it. @param {JobView} view */
function customersPage({ job, assessment }) {
  const { version, answer } = assessment.approval
  return html`
    <section aria-labelledby="hand-over-page">
      <h2 id="hand-over-page">${text.page}</h2>
      ${version === 0 && assessment.quote.lines.some(({ net }) => net !== null)
        ? html`<p>${text.proposeFirst}</p><a class="button" href=${toScreen(job, 'approval')}>${text.toProposal}</a>`
        : html`<p class="hint">${answer ? text.pageAnswered : text.pageHint}</p>`}
      <div class="hand-over-ways">
        <button type="button" class="primary" @click=${() => savePaper(job, 'customers-pdf')}>${text.pagePdf}</button>
        ${surroundings.sharesFiles
          ? html`<button type="button"
            @click=${() => sharePaper(job, 'customers-png', `${text.page}.png`)}>${text.sharePicture}</button>`
          : ''}
        <button type="button" @click=${() => savePaper(job, 'customers-png')}>${text.pagePng}</button>
        <button type="button" @click=${() => savePaper(job, 'customers-html')}>${text.pageHtml}</button>
        ${surroundings.phone.share
          ? html`<button type="button" ?disabled=${!message}
            @click=${() => shareOther(() => shareText(message ?? '', text.page))}>${text.shareMessage}</button>`
          : ''}
        <button type="button" ?disabled=${!message}
          @click=${() => copyFrom('textarea.message-text')}>${text.copy}</button>
      </div>
      <textarea class="message-text" readonly rows="4" aria-label=${text.message}
        .value=${message ?? words.frame.loading}></textarea>
    </section>`
}

/** @param {string} job */
function report(job) {
  const chooseExtent = (/** @type {Extent} */ chosen) => {
    extent = chosen
    redraw()
  }
  const choosePurpose = (/** @type {Purpose} */ chosen) => {
    purpose = chosen
    redraw()
  }
  return html`
    <section aria-labelledby="hand-over-report">
      <h2 id="hand-over-report">${text.report}</h2>
      <div class="pair">
        <div>
          ${choice({
            name: 'extent',
            legend: text.extent,
            options: optionsOf(text.extents),
            value: extent,
            choose: chooseExtent,
          })}
          <p class="hint">${text.extentsHint[extent]}</p>
        </div>
        ${choice({
          name: 'paper',
          legend: text.paper,
          options: optionsOf(text.papers),
          value: state.settings.paper,
          choose: (/** @type {PaperSize} */ paper) => keepSettings({ paper }),
        })}
        <div>
          ${choice({
            name: 'purpose',
            legend: text.purpose,
            options: optionsOf(text.purposes),
            value: purpose,
            choose: choosePurpose,
          })}
          <p class="hint">${text.purposesHint[purpose]}</p>
        </div>
      </div>
      <div class="hand-over-ways">
        <button type="button" class="primary"
          @click=${() => savePaper(job, 'report-pdf', { extent, purpose })}>${text.save}</button>
        ${surroundings.sharesFiles
          ? html`<button type="button"
            @click=${() => sharePaper(
              job,
              'report-pdf',
              `${text.report}.pdf`,
              { extent, purpose },
            )}>${text.share}</button>`
          : ''}
        ${surroundings.opensDocuments
          ? html`<button type="button"
            @click=${() => openPaper(job, 'report-pdf', { extent, purpose })}>${text.open}</button>`
          : ''}
      </div>
    </section>`
}
