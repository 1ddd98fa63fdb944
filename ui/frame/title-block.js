// The title block: whose engine, which screen, and the ways to the other screens.
/** @import { JobView } from '../types/api.d.ts' */
/** @import { Screen } from './screens.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { areWaiting } from '../drafts.js'
import { undo } from '../edits/together.js'
import { painted } from '../painted.js'
import { toScreen, toShop, walkOn } from '../route.js'
import { redraw, state } from '../state.js'
import { words } from '../words.js'
import { openKeySheet } from './key-sheet.js'
import { isPrinted, print } from './print.js'
import { JOB_SCREENS, SHOP_SCREENS } from './screens.js'

/** The list of screens, where there is no room to show it always. */
let isUnfolded = false

export const foldScreens = () => {
  isUnfolded = false
}

/** Back folds the list before it leads anywhere: for that it has a step of its own in the history. */
const ITS_STEP = { isListOfScreens: true }

/** @param {boolean} unfolded */
function unfold(unfolded) {
  isUnfolded = unfolded
  redraw()
  if (unfolded) painted().then(() => isUnfolded && !isItsStep() && history.pushState(ITS_STEP, ''))
  else if (isItsStep()) history.back()
}

const isItsStep = () => Boolean(history.state?.isListOfScreens)

addEventListener('popstate', () => {
  // Come back to from a screen that was not in the list.
  if (isItsStep() && !isUnfolded) return history.back()
  if (isItsStep() || !isUnfolded) return
  foldScreens()
  redraw()
})

/** @param {JobView | null} view @param {Screen} screen */
export function titleBlock(view, screen) {
  const isSaving = state.waiting.length > 0 || areWaiting()
  return html`
    <div class="title-block">
      <p class="title-line">
        <span class="title-job">${view ? jobName(view) : words.app}</span>
        <span class="title-screen" aria-hidden="true">${screen.title}</span>
        <span class="title-state" role="status">${isSaving ? words.frame.saving : state.notice}</span>
      </p>
      ${state.route.job ? jobNav(view, screen) : appNav()}
    </div>`
}

/** How a job is called: by its customer and machine. @param {JobView} view */
function jobName({ texts: { customer, machine } }) {
  if (!customer && !machine) return words.frame.unnamed
  return html`${customer ? html`<span class="title-customer">${customer}</span>` : ''}${machine
    ? html`<span class="title-machine">${customer ? ' · ' : ''}${machine}</span>`
    : ''}`
}

function appNav() {
  return html`
    <nav class="title-nav" aria-label=${words.frame.appNav}>
      ${SHOP_SCREENS.map((name) => link(toShop(name), words.screens[name], state.route.screen === name))}
    </nav>`
}

/** @param {JobView | null} view @param {Screen} shown */
function jobNav(view, shown) {
  const { job, screen } = state.route
  const open = state.wide || isUnfolded
  return html`
    <nav aria-label=${words.frame.nav}>
      <ul class="screen-list" id="screen-list" ?hidden=${!open} @click=${isUnfolded ? inItsPlace : null}>
        <li>${link(toShop('jobs'), words.screens.jobs, false)}</li>
        ${JOB_SCREENS.map((name) => html`
          <li>${link(toScreen(job, name), words.screens[name], name === screen)}</li>`)}
      </ul>
      <div class="title-nav">
        <button type="button" class="unfold" aria-expanded=${open ? 'true' : 'false'} aria-controls="screen-list"
          ?hidden=${state.wide} @click=${() => unfold(!isUnfolded)}>${words.frame.screens}</button>
        ${state.wide ? '' : link(toScreen(job, 'plan'), words.screens.plan, screen === 'plan')}
        ${undoButton(view?.job, view?.last_edit, words.frame.undo)}
        ${undoButton(view?.job, view?.redo, words.frame.redo)}
        ${state.wide && isPrinted(shown)
          ? html`<button type="button" @click=${() => print(shown)}>${words.frame.print}</button>`
          : ''}
        ${state.wide ? html`<button type="button" @click=${openKeySheet}>${words.keys.title}</button>` : ''}
      </div>
    </nav>`
}

/** The screen that is chosen takes the step of the list. @param {MouseEvent} event */
function inItsPlace(event) {
  const chosen = /** @type {HTMLElement} */ (event.target).closest('a')
  if (chosen && isItsStep()) walkOn(event, chosen.href)
}

/** @param {string} address @param {string} label @param {boolean} current */
const link = (address, label, current) =>
  html`<a href=${address} aria-current=${current ? 'page' : 'false'}>${label}</a>`

/** Undoing an undo does the edit again.
 * @param {string | undefined} job @param {string | null | undefined} edit @param {string} label */
function undoButton(job, edit, label) {
  // What is still on its way has no id yet: it can be undone once it is saved.
  const isReady = Boolean(edit) && state.waiting.length === 0
  const press = () => job && edit && isReady && undo(job, edit)
  return html`<button type="button" aria-disabled=${isReady ? 'false' : 'true'} @click=${press}>${label}</button>`
}
