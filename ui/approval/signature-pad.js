// A field three times as wide as high, in which the customer signs with a finger, a pen or the mouse.
/** @import { Point } from '../controls/pen.js' */
import { html, svg } from '../vendor/lit-html/lit-html.js'
import { penOn } from '../controls/pen.js'
import { words } from '../words.js'

const text = words.approval

/** A line of the signature. @typedef {Point[]} Stroke */

/** Across the drawing: it is three times as wide as high. */
const ACROSS = 3
/** Points closer together than this say nothing new. */
const NEAR = 40

/** @param {Stroke[]} signature @param {(signature: Stroke[]) => void} sign */
export function signaturePad(signature, sign) {
  const { begin, goOn, end } = penOn({
    saysMore: (last, point) => Math.hypot((point[0] - last[0]) * ACROSS, point[1] - last[1]) >= NEAR,
    show: (field, line) => field.querySelector('.sign-now')?.setAttribute('d', line.length > 0 ? pathOf(line) : 'M0 0'),
    done: (line) => sign([...signature, line]),
  })
  return html`
    <div class="sign">
      <p class="field-label" id="sign-here">${text.sign}</p>
      <p class="hint">${text.signHint}</p>
      <svg class="signature sign-field" viewBox="0 0 30000 10000" role="img"
        aria-label=${signature.length > 0 ? text.signed(signature.length) : text.notSigned}
        @pointerdown=${begin} @pointermove=${goOn} @pointerup=${end} @pointercancel=${end}>
        <path class="sign-line" d="M1500 8200H28500"/>
        ${strokes(signature)}<path class="stroke sign-now"/>
      </svg>
      <button type="button" class="quiet" aria-disabled=${signature.length > 0 ? 'false' : 'true'}
        @click=${() => signature.length > 0 && sign([])}>${text.clear}</button>
    </div>`
}

/** A signature as lines. @param {Stroke[]} signature */
export const strokes = (signature) => signature.map((stroke) => svg`<path class="stroke" d=${pathOf(stroke)}/>`)

/** A single point is a dot. @param {Stroke} stroke */
const pathOf = (stroke) =>
  `M${stroke.map(([x, y]) => `${x * ACROSS} ${y}`).join('L')}${stroke.length === 1 ? 'h1' : ''}`
