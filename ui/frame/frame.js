// The drawing sheet around every screen: the sheet itself, and at its foot the title block with the ways to go.
import { html } from '../vendor/lit-html/lit-html.js'
import { approval } from '../approval/approval.js'
import { causes } from '../cause/causes.js'
import { costs } from '../cost/cost.js'
import { decisions } from '../decision/decision-list.js'
import { handOver } from '../hand-over/hand-over.js'
import { history } from '../history/history.js'
import { instruments } from '../instrument/instrument-list.js'
import { intake } from '../intake/intake.js'
import { jobList } from '../job-list/job-list.js'
import { limits } from '../limits/limits.js'
import { lists } from '../list/list.js'
import { marks } from '../marks/marks.js'
import { part } from '../part/part.js'
import { measure } from '../measure/measure.js'
import { plan } from '../plan/plan.js'
import { prices } from '../price/prices.js'
import { rules } from '../rule/rules.js'
import { settings } from '../settings/settings.js'
import { sizes } from '../sizes/sizes.js'
import { toSheet } from '../route.js'
import { redraw, shownJob, state } from '../state.js'
import { words } from '../words.js'
import { titleBlock } from './title-block.js'

/**
 * @typedef {object} Sheet what a screen puts on the sheet
 * @property {string} title
 * @property {unknown} body
 * @property {unknown} [bar] controls that stay in reach of the thumb
 */

/** @type {Record<string, (view: import('../types/api.d.ts').JobView) => Sheet>} */
const sheets = { intake, marks, plan, limits, sizes, part, measure, causes, decisions, lists, costs, approval, 'hand-over': handOver, history }

export function frame() {
  const view = shownJob()
  const sheet = sheetOf(view)
  const beside = state.wide && state.route.screen === 'part' && view?.plan ? plan(view) : null
  return {
    title: sheet.title,
    content: html`
      <main class=${beside ? 'sheet sheet-beside' : 'sheet'}>
        ${beside ? html`<section class="beside" aria-label=${beside.title} tabindex="0">${beside.body}</section>` : ''}
        <div class="sheet-main" tabindex="0">
          <h1 tabindex="-1">${sheet.title}</h1>
          <button type="button" class="skip" @click=${toFoot}>${words.frame.toFoot}</button>
          ${view && view.closed_at !== null && state.route.screen !== 'hand-over' ? closed(view.job) : ''}
          ${sheet.body}
        </div>
      </main>
      <footer class="foot">
        <div role="alert" class="alert">${state.alert ? alert() : ''}</div>
        ${sheet.bar ?? ''}
        ${titleBlock(view, sheet.title)}
      </footer>`,
  }
}

/** @param {string} job */
const closed = (job) => html`<p class="notice">${words.frame.closed} <a href=${toSheet(job, 'hand-over')}>${words.frame.toReopen}</a></p>`

/** Past all that stands on the sheet, for those who go by the keyboard. */
function toFoot() {
  /** @type {HTMLElement[]} */
  const controls = Array.from(document.querySelectorAll('.foot :is(a, button, input)'))
  controls.find((control) => control.getClientRects().length > 0)?.focus()
}

/** @param {import('../types/api.d.ts').JobView | null} view @returns {Sheet} */
function sheetOf(view) {
  const { screen, job } = state.route
  if (screen === 'settings') return settings()
  if (screen === 'instruments') return instruments()
  if (screen === 'prices') return prices()
  if (screen === 'rules') return rules()
  if (!job) return jobList()
  const draw = sheets[screen]
  if (view && draw) return draw(view)
  return { title: words.screens[screen], body: html`<p>${state.alert ? words.frame.missing : words.frame.loading}</p>` }
}

function alert() {
  const close = () => {
    state.alert = ''
    redraw()
  }
  return html`<p>${state.alert}</p><button type="button" @click=${close}>${words.frame.close}</button>`
}
