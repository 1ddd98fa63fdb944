// A field three times as wide as high, in which the customer signs with a finger, a pen or the mouse.
import { html, svg } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'

const text = words.approval

/** Points of a line, each from edge to edge of the field. @typedef {[number, number][]} Stroke */

/** The field from edge to edge, as it is kept. */
const EDGE = 10_000
/** Across the drawing: it is three times as wide as high. */
const ACROSS = 3
/** Points closer together than this say nothing new. */
const NEAR = 40

/** The line that is being drawn. It is put on the screen directly: a drawing of the whole page would lag behind the finger.
 * @type {Stroke} */
let line = []

/** @param {Stroke[]} signature @param {(signature: Stroke[]) => void} sign */
export function signaturePad(signature, sign) {
  /** @param {PointerEvent} event */
  const begin = (event) => {
    if (event.button !== 0) return
    fieldOf(event).setPointerCapture(event.pointerId)
    line = []
    draw(event)
  }
  /** @param {PointerEvent} event */
  const goOn = (event) => fieldOf(event).hasPointerCapture(event.pointerId) && draw(event)
  const end = () => {
    if (line.length > 0) sign([...signature, line])
    line = []
  }
  return html`
    <div class="sign">
      <p class="field-label" id="sign-here">${text.sign}</p>
      <p class="hint">${text.signHint}</p>
      <svg class="signature sign-field" viewBox="0 0 30000 10000" role="img"
        aria-label=${signature.length > 0 ? text.signed(signature.length) : text.notSigned}
        @pointerdown=${begin} @pointermove=${goOn} @pointerup=${end} @pointercancel=${end}>
        <path class="sign-line" d="M1500 8200H28500"/>
        ${strokes(signature)}<path class="stroke sign-now" d=${line.length > 0 ? pathOf(line) : 'M0 0'}/>
      </svg>
      <button type="button" class="quiet" aria-disabled=${signature.length > 0 ? 'false' : 'true'} @click=${() => signature.length > 0 && sign([])}>${text.clear}</button>
    </div>`
}

/** A signature as lines. @param {Stroke[]} signature */
export const strokes = (signature) => signature.map((stroke) => svg`<path class="stroke" d=${pathOf(stroke)}/>`)

/** @param {PointerEvent} event */
const fieldOf = (event) => /** @type {SVGSVGElement} */ (event.currentTarget)

/** @param {PointerEvent} event */
function draw(event) {
  const field = fieldOf(event)
  const points = event.getCoalescedEvents?.() ?? []
  for (const point of points.length > 0 ? points : [event]) add(placeOf(field, point))
  field.querySelector('.sign-now')?.setAttribute('d', pathOf(line))
}

/** @param {[number, number]} point */
function add(point) {
  const last = line.at(-1)
  if (!last || Math.hypot((point[0] - last[0]) * ACROSS, point[1] - last[1]) >= NEAR) line.push(point)
}

/** @param {SVGSVGElement} field @param {{ clientX: number, clientY: number }} point @returns {[number, number]} */
function placeOf(field, { clientX, clientY }) {
  const { left, top, width, height } = field.getBoundingClientRect()
  return [within((clientX - left) / width), within((clientY - top) / height)]
}

/** @param {number} share */
const within = (share) => Math.round(EDGE * Math.min(1, Math.max(0, share)))

/** A single point is a dot. @param {Stroke} stroke */
const pathOf = (stroke) => `M${stroke.map(([x, y]) => `${x * ACROSS} ${y}`).join('L')}${stroke.length === 1 ? 'h1' : ''}`
