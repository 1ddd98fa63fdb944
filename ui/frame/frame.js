// The drawing sheet around every screen: the screen itself, and at its foot the title block with the ways to go.
/** @import { JobView } from '../types/api.d.ts' */
/** @import { Screen } from './screens.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { plan } from '../plan/plan.js'
import { toScreen } from '../route.js'
import { redraw, shownJob, state } from '../state.js'
import { words } from '../words.js'
import { keySheet } from './key-sheet.js'
import { SCREENS } from './screens.js'
import { titleBlock } from './title-block.js'
import { toldLine } from './told-line.js'
import { underWayBar } from './under-way.js'

export function frame() {
  const view = shownJob()
  const screen = screenOf(view)
  const beside = state.wide && !screen.fills ? besideOf(screen, view) : null
  return {
    title: screen.title,
    content: html`
      <main class=${`screen ${beside ? 'screen-beside' : ''} ${screen.fills ? 'screen-filled' : ''}`}>
        ${beside
          ? html`<section class=${`beside beside-${state.route.screen}`} aria-labelledby="beside-title" tabindex="0">
            <h2 id="beside-title" class="beside-title">${beside.title}</h2>
            ${beside.body}
          </section>`
          : ''}
        <div class="screen-main" tabindex="0">
          <h1 tabindex="-1">${screen.title}</h1>
          <button type="button" class="skip" @click=${toFoot}>${words.frame.toFoot}</button>
          ${view && view.closed_at !== null && state.route.screen !== 'hand-over' ? closed(view.job) : ''}
          ${screen.body}
        </div>
      </main>
      <footer class="foot">
        <div class="foot-bars">
          <div role="alert" class="alert">${state.alert ? alert() : ''}</div>
          ${underWayBar()}
          ${toldLine()}
          ${screen.bar ?? ''}
        </div>
        ${titleBlock(view, screen)}
      </footer>
      ${keySheet()}`,
  }
}

/** What a screen leads through stands beside it, where there is room; beside a part its plan.
 * @param {Screen} screen @param {JobView | null} view */
function besideOf(screen, view) {
  if (screen.beside) return screen.beside
  return state.route.screen === 'part' && view?.plan ? plan(view) : null
}

/** @param {string} job */
const closed = (job) =>
  html`<p class="notice">${words.frame.closed} <a href=${toScreen(job, 'hand-over')}>${words.frame.toReopen}</a></p>`

/** Past all that stands on the screen, for those who go by the keyboard. */
function toFoot() {
  /** @type {HTMLElement[]} */
  const controls = Array.from(document.querySelectorAll('.foot :is(a, button, input)'))
  controls.find((control) => control.getClientRects().length > 0)?.focus()
}

/** @param {JobView | null} view @returns {Screen} */
function screenOf(view) {
  const { screen } = state.route
  const entry = SCREENS[screen]
  if (entry.of === 'shop') return entry.draw()
  if (view) return entry.draw(view)
  const text = state.alert ? words.frame.missing : words.frame.loading
  return { title: words.screens[screen], body: html`<p>${text}</p>` }
}

function alert() {
  const close = () => {
    state.alert = ''
    redraw()
  }
  return html`<p>${state.alert}</p><button type="button" @click=${close}>${words.frame.close}</button>`
}
