// The form of a part, drawn from its readings and enlarged: along the part and in section, against what is allowed.
/** @import { PartView, Phase, Quantity } from '../types/api.d.ts' */
/** @import { Form } from './form.js' */
import { html, svg } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'
import { drawnOff, formOf } from './form.js'
import { stepsOf } from './walk.js'

const text = words.measure
const RADIUS = 44
const ROOM = 18
/** The middle of the view along the part, its half length, and the middle of the section. */
const ALONG = { x: 90, y: 80, half: 66 }
const ROUND = { x: 243, y: 80 }

/** @param {PartView} part @param {Quantity} quantity @param {Phase} phase */
export function formDrawing(part, quantity, phase) {
  const form = formOf(part, quantity, phase, RADIUS, ROOM)
  if (!form) return ''
  const worstAt = stepsOf(part, form.worst.quantity, '').find(({ spot }) =>
    spot.station === form.worst.spot.station && spot.direction === form.worst.spot.direction)?.label ?? ''
  const hasLimits = [...form.allowed, ...form.fresh].some((limit) => limit !== null)
  return html`
    <figure class="form-drawing">
      <svg viewBox="0 0 320 160" role="img"
        aria-label=${`${text.formName(part.label, form.times)}: ${told(part, form)}; ${text.worst(worstAt)}`}>
        ${form.stations.length > 1 ? profile(form, part.kind === 'bore') : ''}
        ${section(form, part.kind === 'bore')}
      </svg>
      <figcaption class="hint">${text.drawn(form.times)} ${hasLimits ? text.formKey : text.formKeyPlain}</figcaption>
    </figure>`
}

/** The readings as a sentence, for those who don't see the drawing. @param {PartView} part @param {Form} form */
const told = (part, form) => stepsOf(part, form.worst.quantity, '').flatMap(({ spot, label }) => {
  const reading =
    part.readings.find((one) => one.stands
      && one.edit
      && one.phase === form.worst.phase
      && one.quantity === form.worst.quantity
    && one.spot.station === spot.station && one.spot.direction === spot.direction)
  return reading ? [`${label} ${reading.value}`] : []
}).join('; ')

/** Both sides of the part along its length; a bore stands upright. @param {Form} form @param {boolean} isBore */
function profile(form, isBore) {
  const { stations } = form
  const along = (/** @type {number} */ nth) => -ALONG.half + (2 * ALONG.half * nth) / Math.max(1, stations.length - 1)
  const sides = /** @type {const} */ ([-1, 1])
  const path = (/** @type {[number, number][]} */ points) => points.length > 1
    ? `M${points.map(([u, v]) => point(u, v)).join('L')}`
    : ''
  const level = (/** @type {number} */ length) => RADIUS + drawnOff(form, length, RADIUS)
  const edge = (/** @type {'a' | 'b'} */ direction) => sides.map((side) => path(stations.flatMap((station, nth) => {
    const length = form.at(station, direction)
    return length === undefined ? [] : [/** @type {[number, number]} */ ([along(nth), side * level(length)])]
  }))).join('')
  const [from, to] = [-ALONG.half - 8, ALONG.half + 8]
  const straight = (/** @type {number | null} */ limit) =>
    limit === null ? '' : sides.map((side) => path([[from, side * level(limit)], [to, side * level(limit)]])).join('')
  const [least, most] = form.fresh
  const band = least === null || most === null ? '' : sides.map((side) => {
    const [low, high] = [side * level(least), side * level(most)]
    return `${path([[from, low], [to, low], [to, high], [from, high]])}Z`
  }).join('')
  const { station, direction } = form.worst.spot
  const nth = stations.findIndex((one) => one === station)
  return svg`
    <g transform=${isBore ? `rotate(90 ${ALONG.x} ${ALONG.y})` : ''}>
      <path class="draw-band" d=${band} />
      <path class="draw-limit" d=${`${straight(form.allowed[0])}${straight(form.allowed[1])}`} />
      <path class="draw-axis" d=${path([[-ALONG.half - 20, 0], [ALONG.half + 20, 0]])} />
      <path class="draw-edge" d=${edge('a')} />
      <path class="draw-edge draw-edge-b" d=${edge('b')} />
      ${nth < 0 || !direction
        ? ''
        : svg`<circle class="draw-worst" cx=${ALONG.x + along(nth)} cy=${ALONG.y - level(form.worst.length)} r="6" />`}
    </g>
    ${isBore
      ? svg`<text class="draw-text draw-mid" x=${ALONG.x} y="11">${text.ends.top}</text><text class="draw-text draw-mid"
        x=${ALONG.x} y="158">${text.ends.bottom}</text>`
      : svg`<text class="draw-text" x="2" y="156">${text.ends.front}</text><text class="draw-text draw-end" x="190"
        y="156">${text.ends.rear}</text>`}`
}

/** @param {number} u @param {number} v */
const point = (u, v) => `${round(ALONG.x + u)} ${round(ALONG.y + v)}`

/** @param {number} n */
const round = (n) => Math.round(n * 100) / 100

/** The part cut across where it is least round; where only one direction was read, a circle of that size.
 * @param {Form} form @param {boolean} isBore */
function section(form, isBore) {
  const stations = form.stations.length > 0 ? form.stations : [undefined]
  const both = stations.flatMap((station) => {
    const [a, b] = [form.at(station, 'a'), form.at(station, 'b')]
    return a === undefined || b === undefined ? [] : [{ station, a, b }]
  })
  const [first] = both
  if (!first) return ''
  const worst = both.reduce((far, one) => (Math.abs(one.a - one.b) > Math.abs(far.a - far.b) ? one : far), first)
  const reach = (/** @type {number} */ length) => round(RADIUS + drawnOff(form, length, RADIUS))
  // On a shaft A stands upright; in a cylinder it runs along the crankshaft, which lies level here.
  const [level, upright] = isBore ? [worst.a, worst.b] : [worst.b, worst.a]
  const ring = (/** @type {number | null} */ limit) =>
    limit === null ? '' : svg`<circle class="draw-limit" cx=${ROUND.x} cy=${ROUND.y} r=${reach(limit)} />`
  const [least, most] = form.fresh
  const name = worst.station ? text.at(worst.station) : ''
  return svg`
    ${least === null || most === null
      ? ''
      : svg`<path class="draw-band" fill-rule="evenodd" d=${`${circle(reach(most))}${circle(reach(least))}`} />`}
    ${ring(form.allowed[0])}${ring(form.allowed[1])}
    <path class="draw-axis"
      d=${`M${ROUND.x - 60} ${ROUND.y}H${ROUND.x + 60}M${ROUND.x} ${ROUND.y - 62}V${ROUND.y + 62}`} />
    <ellipse class="draw-edge" cx=${ROUND.x} cy=${ROUND.y} rx=${reach(level)} ry=${reach(upright)} />
    <text class="draw-text" x=${ROUND.x + 4} y="11">${isBore ? 'B' : 'A'}</text>
    <text class="draw-text draw-end" x="319" y=${ROUND.y - 4}>${isBore ? 'A' : 'B'}</text>
    <text class="draw-text draw-mid" x=${ROUND.x} y="158">${name}</text>`
}

/** @param {number} r */
const circle = (r) => `M${ROUND.x - r} ${ROUND.y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`
