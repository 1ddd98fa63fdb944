// How much has been looked at, drawn as a dimension line.
/** @import { Progress } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'

/** @param {Pick<Progress, 'looked' | 'parts'>} progress
 * @param {(done: number, all: number) => string} [inWords] if something else is counted */
export function progress({ looked, parts }, inWords = words.plan.progress) {
  const share = parts > 0 ? (100 * looked) / parts : 0
  return html`
    <p class="progress">
      <span>${inWords(looked, parts)}</span>
      <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true" focusable="false">
        <path class="dimension" d="M0.3 0V8M99.7 0V8M0 4H100" />
        <path class="dimension-done" d=${`M0 4H${share.toFixed(1)}`} />
      </svg>
    </p>`
}
