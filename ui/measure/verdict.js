// What a reading says about a limit, as a mark that needs no colour: an open ring with a tick, a ring half hatched, a
// full ring with a cross; a broken ring where something must be known first.
/** @import { Figure, Conformity } from '../types/api.d.ts' */
import { html, svg } from '../vendor/lit-html/lit-html.js'
import { catalogue, conformityOf } from '../catalogue.js'

const RING = 'M12 3A9 9 0 1 0 12 21A9 9 0 1 0 12 3Z'

/** @type {Record<Conformity | 'open', unknown>} */
const MARKS = {
  within: svg`<path class="verdict-ring" d=${RING} /><path class="verdict-sign" d="M7.5 12.5L10.8 15.8L16.5 8.5" />`,
  'too-close': svg`<path class="verdict-ring" d=${RING} /><path class="verdict-half" d="M12 3A9 9 0 0 1 12 21Z" />`,
  outside: svg`<path class="verdict-full" d=${RING} /><path class="verdict-cross" d="M8 8L16 16M16 8L8 16" />`,
  open: svg`<path class="verdict-ring verdict-broken" d=${RING} />`,
}

/** The mark beside its word. @param {Conformity | 'open'} verdict */
export const verdictMark = (verdict) => html`
  <span class=${`verdict verdict-${verdict}`}>
    <svg class="verdict-mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">${MARKS[verdict]}</svg>
    ${verdict === 'open' ? catalogue().not_judged : conformityOf(verdict).words}
  </span>`

/** The verdict of a figure; none where there is no limit.
 * @param {Figure} figure @returns {Conformity | 'open' | null} */
export const verdictOf = ({ verdict, limits }) => verdict ?? (limits ? 'open' : null)
