// The outlines by which parts are drawn, in a square of 48 units. Each is one closed shape that takes the hatching,
// and lines of its own. All drawings are ours.
/** @import { Symbol } from '../types/api.d.ts' */
import { svg } from '../vendor/lit-html/lit-html.js'

/** @type {Record<Symbol, { shape: string, lines?: string }>} */
const SYMBOLS = {
  'shell-upper': { shape: 'M43 3A21 21 0 0 0 43 45V34A10 10 0 0 1 43 14Z' },
  'shell-lower': { shape: 'M5 3A21 21 0 0 1 5 45V34A10 10 0 0 0 5 14Z' },
  // The webs above and below meet those of the neighbours, so that the column reads as a shaft.
  journal: { shape: 'M4 10H44V38H4Z', lines: 'M14 0V10M34 0V10M14 38V48M34 38V48' },
  housing: { shape: 'M7 7H41V41H7ZM24 13A11 11 0 1 0 24 35A11 11 0 1 0 24 13Z' },
  // Seen from its edge, with room for its name beside it.
  thrust: { shape: 'M3 5H14V43H3Z' },
  rod: {
    shape: 'M3 24A7 7 0 0 1 15.5 19.5L27 16.5A10.5 10.5 0 1 1 27 31.5L15.5 28.5A7 7 0 0 1 3 24Z' +
      'M7 24A3 3 0 1 0 13 24A3 3 0 1 0 7 24ZM28.5 24A6 6 0 1 0 40.5 24A6 6 0 1 0 28.5 24Z',
  },
  piston: { shape: 'M9 7H39V41H31V35H17V41H9Z', lines: 'M9 12H39M9 17H39M9 22H39' },
  rings: { shape: 'M7 9H41V15H7ZM7 21H41V27H7ZM7 33H41V39H7Z' },
  bore: { shape: 'M24 5A19 19 0 1 0 24 43A19 19 0 1 0 24 5Z' },
  lobe: { shape: 'M24 4C31 4 32 12 35 20A14 14 0 1 1 13 20C16 12 17 4 24 4Z' },
  tappet: { shape: 'M18 5H30V33H38V42H10V33H18Z', lines: 'M18 11H30' },
  // A thin rod between two balls.
  pushrod: { shape: 'M21.5 18.7A7.5 7.5 0 1 1 26.5 18.7V29.3A7.5 7.5 0 1 1 21.5 29.3Z' },
  bush: { shape: 'M24 5A19 19 0 1 0 24 43A19 19 0 1 0 24 5ZM24 13A11 11 0 1 1 24 35A11 11 0 1 1 24 13Z' },
  item: { shape: 'M1.5 3H46.5V45H1.5Z' },
}

/** How a part looks on paper: blank, or hatched by its worst grade. @param {number | null} worst */
export const hatching = (worst) => {
  if (!worst) return 'var(--paper)'
  return worst === 4 ? 'currentColor' : `url(#hatch-${worst})`
}

/** Its outline alone, for a drawing at a glance.
 * @param {Symbol} symbol @param {number | null} worst @param {string} look @param {string} at where */
export const outline = (symbol, worst, look, at) => svg`
  <path class=${`symbol-shape ${look}`} d=${SYMBOLS[symbol].shape} fill-rule="evenodd" fill=${hatching(worst)}
    transform=${at}/>`

/** @param {Symbol} symbol @param {number | null} worst */
export function symbolDrawing(symbol, worst) {
  const { shape, lines } = SYMBOLS[symbol]
  return svg`
    <path class="symbol-shape" d=${shape} fill-rule="evenodd" fill=${hatching(worst)}/>
    ${lines ? svg`<path class="symbol-lines" d=${lines} fill="none"/>` : ''}`
}
