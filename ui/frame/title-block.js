// The title block: whose engine, which sheet, and the ways to the other sheets.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { append } from '../edits/queue.js'
import { SHEETS, toInstruments, toJobs, toPrices, toSettings, toSheet } from '../route.js'
import { redraw, state } from '../state.js'
import { words } from '../words.js'

/** @param {JobView | null} view @param {string} sheet */
export function titleBlock(view, sheet) {
  return html`
    <div class="title-block">
      <p class="title-line">
        <span class="title-job">${view ? jobName(view) : words.app}</span>
        <span class="title-sheet" aria-hidden="true">${sheet}</span>
        <span class="title-state" role="status">${state.waiting.length > 0 ? words.frame.saving : state.notice}</span>
      </p>
      ${state.route.job ? jobNav(view) : appNav()}
    </div>`
}

/** How a job is called: by its customer and machine. @param {JobView} view */
const jobName = ({ texts }) => [texts.customer, texts.machine].filter(Boolean).join(' · ') || words.frame.unnamed

function appNav() {
  return html`
    <nav class="title-nav" aria-label=${words.frame.appNav}>
      ${link(toJobs, words.screens.jobs, state.route.screen === 'jobs')}
      ${link(toInstruments(), words.screens.instruments, state.route.screen === 'instruments')}
      ${link(toPrices, words.screens.prices, state.route.screen === 'prices')}
      ${link(toSettings, words.screens.settings, state.route.screen === 'settings')}
    </nav>`
}

/** @param {JobView | null} view */
function jobNav(view) {
  const { job, screen } = state.route
  const unfold = () => {
    state.sheetsOpen = !state.sheetsOpen
    redraw()
  }
  const open = state.wide || state.sheetsOpen
  return html`
    <nav aria-label=${words.frame.nav}>
      <ul class="sheet-list" id="sheet-list" ?hidden=${!open}>
        <li>${link(toJobs, words.screens.jobs, false)}</li>
        ${SHEETS.map((name) => html`<li>${link(toSheet(job, name), words.screens[name], name === screen)}</li>`)}
      </ul>
      <div class="title-nav">
        <button type="button" class="unfold" aria-expanded=${open ? 'true' : 'false'} aria-controls="sheet-list"
          ?hidden=${state.wide} @click=${unfold}>${words.frame.sheets}</button>
        ${state.wide ? '' : link(toSheet(job, 'plan'), words.screens.plan, screen === 'plan')}
        ${undoButton(view?.job, view?.last_edit, words.frame.undo)}
        ${undoButton(view?.job, view?.redo, words.frame.redo)}
      </div>
    </nav>`
}

/** @param {string} address @param {string} label @param {boolean} current */
const link = (address, label, current) =>
  html`<a href=${address} aria-current=${current ? 'page' : 'false'}>${label}</a>`

/** Undoing an undo does the edit again. @param {string | undefined} job @param {string | null | undefined} edit @param {string} label */
function undoButton(job, edit, label) {
  // What is still on its way has no id yet: it can be undone once it is saved.
  const isReady = Boolean(edit) && state.waiting.length === 0
  const undo = () => job && edit && isReady && append(job, { do: 'undo', edit })
  return html`<button type="button" aria-disabled=${isReady ? 'false' : 'true'} @click=${undo}>${label}</button>`
}
