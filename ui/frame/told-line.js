// What was just done, in one line above the bar, with what can be done about it.
import { html } from '../vendor/lit-html/lit-html.js'
import { forgetTold, tellThere, toldHere } from '../edits/told.js'
import { readRoute, walkOn } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'

const text = words.told

/** The line is there before its words, so that they are read out. */
export function toldLine() {
  const told = toldHere()
  return html`
    <div class=${told ? 'told' : 'told told-empty'}>
      <p role="status">${told?.sentence ?? ''}</p>
      ${told?.takeBack ? html`<button type="button" @click=${takeBack}>${text.takeBack}</button>` : ''}
      ${told?.place ? way(told.place, text.show) : ''}
      ${told?.from ? way(told.from, text.back) : ''}
    </div>`
}

function takeBack() {
  const told = toldHere()
  forgetTold()
  told?.takeBack?.()
}

/** From one part to another it goes like any step of a walk.
 * @param {string} address @param {string} label */
function way(address, label) {
  const isStep = state.route.part !== '' && readRoute(address).part !== ''
  const follow = (/** @type {MouseEvent} */ event) => {
    const told = toldHere()
    if (told) tellThere(told)
    if (isStep) walkOn(event)
  }
  return html`<a class="button" href=${address} @click=${follow}>${label}</a>`
}
