// A share, drawn as a dimension line. The words beside it say the same.
import { html } from '../vendor/lit-html/lit-html.js'

/** @param {number} share 0 to 1 */
export const dimension = (share) => html`
  <svg class="share" viewBox="0 0 60 12" width="60" height="12" aria-hidden="true" focusable="false">
    <path class="dimension" d="M1 1V11M59 1V11M1 6H59"/><path class="dimension-done"
      d=${`M1 6H${(2 + 56 * share).toFixed(1)}`}/>
  </svg>`
