// What came of the recovery of a damaged database, until the person has seen it.
/** @import { Recovery } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { redraw } from '../state.js'
import { words } from '../words.js'

const text = words.jobs

/** Under which it is kept on this device which one was seen last. */
const SEEN = 'recovery seen'

/** Another recovery has another folder of damaged files. @param {Recovery} recovery */
export function recovered(recovery) {
  if (seen() === recovery.aside) return ''
  return html`
    <details>
      <summary>${text.recovered}</summary>
      <p>${text.recoveredWhat(recovery)}</p>
      <button type="button" @click=${() => putAway(recovery)}>${text.recoveredSeen}</button>
    </details>`
}

/** Where nothing can be kept, it is shown again. */
function seen() {
  try {
    return localStorage.getItem(SEEN)
  } catch {
    return null
  }
}

/** @param {Recovery} recovery */
function putAway({ aside }) {
  try {
    localStorage.setItem(SEEN, aside)
  } catch (failure) {
    console.error(failure)
  }
  redraw()
}
