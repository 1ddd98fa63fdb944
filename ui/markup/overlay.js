// What is drawn over a photo, as lines on top of it: ink on a rim of white, to be seen on bright and on dark metal.
/** @import { Markup } from '../types/api.d.ts' */
/** @import { Point } from '../controls/pen.js' */
import { html, nothing, svg } from '../vendor/lit-html/lit-html.js'
import { EDGE } from '../controls/pen.js'
import { redraw } from '../state.js'
import { anchorOf, numbersOf } from './shape.js'

/** The height of the drawing; its width follows from the picture. */
const HEIGHT = 1000
/** In hundredths of the shorter side. */
const DISC = 5.6
const FIGURE = 7.6
const BARB = 7
/** The cosine and sine of 150 degrees, by which an arrow's barbs are turned from its direction. */
const [BACK_COS, BACK_SIN] = [-Math.sqrt(3) / 2, 0.5]

/** Width over height of the pictures that have been shown. @type {Map<string, number>} */
const ratios = new Map()

/** Not known before the picture is there. @param {string} photo */
export const ratioOf = (photo) => ratios.get(photo)

/** Takes note of a picture's form once it is there. @param {string} photo */
export const measure = (photo) => (/** @type {Event} */ event) => {
  const { naturalWidth, naturalHeight } = /** @type {HTMLImageElement} */ (event.currentTarget)
  if (naturalHeight === 0 || ratios.get(photo) === naturalWidth / naturalHeight) return
  ratios.set(photo, naturalWidth / naturalHeight)
  redraw()
}

/** Lines over a picture that fills its box wholly (`slice`) or is seen whole in it (`meet`). Words stand beside it, not
 * here.
 * @param {string} photo @param {Markup[]} markups @param {'meet' | 'slice'} [fit] */
export function overlay(photo, markups, fit = 'meet') {
  const ratio = ratios.get(photo)
  if (!ratio || markups.length === 0) return nothing
  return html`<svg class="overlay" viewBox="0 0 ${HEIGHT * ratio} ${HEIGHT}" preserveAspectRatio="xMidYMid ${fit}"
    aria-hidden="true">
    ${lines(markups, ratio)}</svg>`
}

/** @param {Markup[]} markups @param {number} ratio
 * @param {Markup[]} [before] what is there already, whose numbers go before */
export function lines(markups, ratio, before = []) {
  const path = markups.map((markup) => pathOf(markup, ratio)).join('')
  const numbers = numbersOf([...before, ...markups]).slice(before.length)
  return svg`<path class="rim" d=${path || nothing}/><path class="line" d=${path || nothing}/>
    ${markups.map((markup, n) =>
      (numbers[n] === null && markup.shape !== 'note' ? nothing : numberAt(markup, numbers[n] ?? '', ratio)))}`
}

/** Above an outline, so that it hides nothing of what lies within.
 * @param {Markup} markup @param {number | string} number @param {number} ratio */
function numberAt(markup, number, ratio) {
  const unit = (HEIGHT * Math.min(1, ratio)) / 100
  const edge = (DISC + 1) * unit
  const [x, top] = onDrawing(anchorOf(markup), ratio)
  const y = markup.shape === 'outline' ? top - edge : top
  const left = Math.max(edge, Math.min(HEIGHT * ratio - edge, x))
  const middle = Math.max(edge, Math.min(HEIGHT - edge, y))
  return svg`<circle class="disc" cx=${left} cy=${middle} r=${DISC * unit}/>
    <text class="figure" x=${left} y=${middle + FIGURE * unit * 0.36} font-size=${FIGURE * unit}>${number}</text>`
}

/** @param {Point} point @param {number} ratio @returns {Point} */
const onDrawing = ([x, y], ratio) => [(x / EDGE) * HEIGHT * ratio, (y / EDGE) * HEIGHT]

/** A line through points. @param {Point[]} points @param {number} ratio */
export const through = (points, ratio) =>
  `M${points.map((point) => onDrawing(point, ratio).map((place) => place.toFixed(1)).join(' ')).join('L')}`

/** @param {Markup} markup @param {number} ratio */
function pathOf(markup, ratio) {
  if (markup.shape === 'outline') return `${through(markup.points, ratio)}Z`
  if (markup.shape === 'note') return ''
  const unit = (HEIGHT * Math.min(1, ratio)) / 100
  const [x1, y1] = onDrawing(markup.from, ratio)
  const [x2, y2] = onDrawing(markup.to, ratio)
  const length = Math.hypot(x2 - x1, y2 - y1) || 1
  const [dx, dy] = [((x2 - x1) / length) * BARB * unit, ((y2 - y1) / length) * BARB * unit]
  const barb = (/** @type {1 | -1} */ side) =>
    `${x2 + dx * BACK_COS - side * dy * BACK_SIN} ${y2 + dy * BACK_COS + side * dx * BACK_SIN}`
  return `M${x1} ${y1}L${x2} ${y2}M${barb(1)}L${x2} ${y2}L${barb(-1)}`
}
