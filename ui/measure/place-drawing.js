// Where the micrometer goes: the part from its side and in section, with the place marked. All drawings are ours.
/** @import { Direction, JobView, PartView, Symbol } from '../types/api.d.ts' */
/** @import { Step } from './walk.js' */
import { html, svg } from '../vendor/lit-html/lit-html.js'
import { quantityOf } from '../catalogue.js'
import { symbolDrawing } from '../plan/symbols.js'
import { words } from '../words.js'
import { placeName } from './pad.js'

const text = words.measure

/** @param {Step} step @param {JobView} view */
export function placeDrawing(step, view) {
  const { directions, how } = quantityOf(step.part.kind, step.quantity)
  const direction = step.spot.direction ? directions[step.spot.direction === 'a' ? 0 : 1] : ''
  return html`
    <figure class="place-drawing">
      <svg viewBox="0 0 320 110" role="img"
        aria-label=${text.drawing(placeName(step), direction)}>${drawn(step, view)}</svg>
      ${direction || how
        ? html`<figcaption class="hint">${[direction, how].filter(Boolean).join('. ')}</figcaption>`
        : ''}
    </figure>`
}

/** @param {Step} step @param {JobView} view */
function drawn(step, view) {
  const { station, direction } = step.spot
  const isInside = /bore|bearing/.test(`${step.part.kind} ${step.quantity}`)
  if (step.quantity === 'lobe-height' || step.quantity === 'base-circle') return lobe(step.quantity)
  if (station === 'top' || station === 'bottom' || (station === 'middle' && step.part.kind === 'bore')) {
    return [bore(station), section(250, direction, true, true)]
  }
  if (station === 'front' || station === 'middle' || station === 'rear') {
    return [shaft(station, direction, isInside), direction ? section(266, direction, isInside, false) : '']
  }
  if (station) return piston(station)
  if (direction) return section(160, direction, isInside, false)
  return svg`<g transform="translate(118 8) scale(1.75)">${symbolDrawing(symbolOf(view, step.part), null)}</g>`
}

/** How the plan draws the part. @param {JobView} view @param {PartView} part @returns {Symbol} */
const symbolOf = (view, part) =>
  view.plan?.sections.flatMap(({ cells }) => cells).find((cell) => cell.part === part.part)?.symbol ?? 'item'

const ALONG = { front: 62, middle: 106, rear: 150 }

/** A journal between its webs, or a bore through its housing: front on the left.
 * @param {'front' | 'middle' | 'rear'} station @param {Direction | undefined} direction @param {boolean} isInside */
function shaft(station, direction, isInside) {
  const x = ALONG[station]
  return svg`
    <text class="draw-text" x="2" y="108">${text.ends.front}</text>
    <text class="draw-text draw-end" x="210" y="108">${text.ends.rear}</text>
    ${isInside
      ? svg`<path class="draw-part draw-hatched" d="M34 8H178V26H34ZM34 74H178V92H34Z" />`
      : svg`<path class="draw-part" d="M14 6H34V94H14ZM178 6H198V94H178ZM34 26H178V74H34Z" />`}
    <path class="draw-axis" d="M4 50H208" />
    ${Object.values(ALONG).map((at) => svg`<path class="draw-line" d=${`M${at} 26V74`} />`)}
    ${direction === 'b' ? towards(x) : arrows(x, 50, 24, isInside, false)}`
}

/** An arrow that points into the paper: the direction that the view from the side can't show. @param {number} x */
const towards = (x) =>
  svg`<circle class="draw-here draw-open" cx=${x} cy="50" r="8" /><path class="draw-here"
    d=${`M${x - 5} 45L${x + 5} 55M${x + 5} 45L${x - 5} 55`} />`

/** A cylinder cut along its length, seen from the side. @param {'top' | 'middle' | 'bottom'} station */
function bore(station) {
  const y = { top: 20, middle: 50, bottom: 80 }[station]
  return svg`
    <text class="draw-text" x="2" y="16">${text.ends.top}</text>
    <text class="draw-text" x="2" y="94">${text.ends.bottom}</text>
    <path class="draw-part draw-hatched" d="M56 4H74V96H56ZM134 4H152V96H134Z" />
    <path class="draw-axis" d="M104 2V98" />
    ${[20, 50, 80].map((at) => svg`<path class="draw-line" d=${`M74 ${at}H134`} />`)}
    ${arrows(104, y, 30, true, true)}`
}

/** A circle with both directions; the one that counts is drawn bold.
 * @param {number} x @param {Direction | undefined} direction @param {boolean} isInside @param {boolean} isBore */
function section(x, direction, isInside, isBore) {
  const r = 27
  // In a cylinder A runs along the crankshaft, which lies across the drawing; on a shaft it stands upright.
  const isLevel = (direction === 'a') === isBore
  return svg`
    <circle class=${isInside ? 'draw-part draw-open' : 'draw-part'} cx=${x} cy="50" r=${r} />
    ${isInside ? svg`<circle class="draw-line" cx=${x} cy="50" r=${r + 8} />` : ''}
    <path class="draw-axis" d=${`M${x - 44} 50H${x + 44}M${x} 8V92`} />
    <text class=${`draw-text draw-mid ${direction === (isBore ? 'b' : 'a') ? 'draw-bold' : ''}`} x=${x + 10}
      y="14">${isBore
      ? 'B'
      : 'A'}</text>
    <text class=${`draw-text draw-mid ${direction === (isBore ? 'a' : 'b') ? 'draw-bold' : ''}`} x=${x + 47}
      y="46">${isBore
      ? 'A'
      : 'B'}</text>
    ${arrows(x, 50, r, isInside, isLevel)}`
}

/** @param {'top-ring' | 'second-ring' | 'third-ring' | 'oil-ring' | string} station */
function piston(station) {
  const y = { 'top-ring': 22, 'second-ring': 34, 'third-ring': 46, 'oil-ring': 58 }[station] ?? 22
  return svg`
    <path class="draw-part" d="M110 10H210V94H184V84H136V94H110Z" />
    ${[22, 34, 46, 58].map((at) => svg`<path class="draw-line" d=${`M110 ${at - 3}H210M110 ${at + 3}H210`} />`)}
    <path class="draw-here" d=${`M110 ${y}H210`} />
    <path class="draw-arrow" d=${`M104 ${y}L90 ${y - 6}V${y + 6}ZM216 ${y}L230 ${y - 6}V${y + 6}Z`} />`
}

/** @param {'lobe-height' | 'base-circle'} quantity */
const lobe = (quantity) => svg`
  <path class="draw-part" d="M160 12C172 12 174 30 180 44A27 27 0 1 1 140 44C146 30 148 12 160 12Z" />
  <path class="draw-axis" d="M160 4V98M118 62H202" />
  ${quantity === 'lobe-height' ? arrows(160, 50.5, 38.5, false, false) : arrows(160, 62, 27, false, true)}`

/** Both anvils: from outside on a shaft, from inside in a bore.
 * @param {number} x @param {number} y @param {number} r half of what is measured @param {boolean} isInside @param
 * {boolean} isLevel */
function arrows(x, y, r, isInside, isLevel) {
  const turn = isLevel ? `rotate(90 ${x} ${y})` : ''
  const way = isInside ? -1 : 1
  const tip = (/** @type {1 | -1} */ side) => {
    const at = y + side * r
    return `M${x} ${at}L${x - 6} ${at + side * way * 12}H${x + 6}Z`
  }
  const line = isInside
    ? `M${x} ${y - r + 10}V${y + r - 10}`
    : `M${x} ${y - r - 16}V${y - r - 10}M${x} ${y + r + 10}V${y + r + 16}`
  return svg`<g transform=${turn}><path class="draw-here" d=${line} /><path class="draw-arrow"
    d=${`${tip(-1)}${tip(1)}`} /></g>`
}
