// What can be drawn over a photo, as numbers: where it begins, how it is moved, turned and made larger.
/** @import { Markup } from '../types/api.d.ts' */
/** @import { Point } from '../controls/pen.js' */
import { EDGE, within } from '../controls/pen.js'

/** An outline or an arrow that reaches no farther than this is a tap, not a line. */
const SMALLEST = 300
/** Points closer together than this say nothing new. */
const NEAR = 100
const MOST_POINTS = 400
/** One step of a button. */
const STEP = 250
const LARGER = 1.2
const TURN = Math.PI / 6

/** @typedef {Markup['shape']} Shape */

/** In the middle of the picture, until it is drawn. @param {Shape} shape @param {number} ratio width over height @param
 * {string} note
 * @returns {Markup} */
export function startOf(shape, ratio, note) {
  if (shape === 'outline') return { shape, points: ringRound([EDGE / 2, EDGE / 2], ratio), note }
  if (shape === 'arrow') return { shape, from: [3000, 7000], to: [EDGE / 2, EDGE / 2], note }
  return { shape, at: [EDGE / 2, EDGE / 2], note }
}

/** A ring that is round on the picture. @param {Point} middle @param {number} ratio @returns {Point[]} */
function ringRound([x, y], ratio) {
  const [across, up] = ratio > 1 ? [1500 / ratio, 1500] : [1500, 1500 * ratio]
  return Array.from({ length: 24 }, (_, n) => {
    const angle = (n / 24) * 2 * Math.PI
    return [within(x + across * Math.cos(angle)), within(y + up * Math.sin(angle))]
  })
}

/** What a line drawn with a finger makes of it; a tap moves what is there.
 * @param {Markup} markup @param {Point[]} line @returns {Markup} */
export function drawn(markup, line) {
  const first = line[0]
  const last = line.at(-1)
  if (!first || !last) return markup
  if (markup.shape === 'note') return { ...markup, at: last }
  const isTap = Math.max(reach(line, 0), reach(line, 1)) < SMALLEST
  if (markup.shape === 'arrow') return isTap ? movedTo(markup, markup.to, last) : { ...markup, from: first, to: last }
  return isTap ? movedTo(markup, middleOf(markup.points), last) : { ...markup, points: thinned(line) }
}

/** @param {Point[]} line @param {0 | 1} way */
function reach(line, way) {
  const places = line.map((point) => point[way])
  return Math.max(...places) - Math.min(...places)
}

/** @param {Point[]} line @returns {Point[]} */
const thinned = (line) => (line.length <= MOST_POINTS ? line : thinned(line.filter((_, n) => n % 2 === 0)))

/** Whether a point is far enough from the one before to be kept. @param {Point} last @param {Point} point */
export const saysMore = (last, point) => Math.hypot(point[0] - last[0], point[1] - last[1]) >= NEAR

/** @param {Point[]} points @returns {Point} */
const middleOf = (points) => [half(points, 0), half(points, 1)]
/** @param {Point[]} points @param {0 | 1} way */
function half(points, way) {
  const places = points.map((point) => point[way])
  return (Math.max(...places) + Math.min(...places)) / 2
}

/** @param {Markup} markup @returns {Point[]} */
const pointsOf = (markup) =>
  markup.shape === 'outline' ? markup.points : markup.shape === 'arrow' ? [markup.from, markup.to] : [markup.at]

/** The same with every point altered.
 * @param {Markup} markup @param {(point: Point) => Point} alter @returns {Markup} */
function altered(markup, alter) {
  if (markup.shape === 'outline') return { ...markup, points: markup.points.map(alter) }
  if (markup.shape === 'arrow') return { ...markup, from: alter(markup.from), to: alter(markup.to) }
  return { ...markup, at: alter(markup.at) }
}

/** As far as it stays on the picture. @param {Markup} markup @param {Point} from @param {Point} to */
function movedTo(markup, from, to) {
  const [x, y] = /** @type {(0 | 1)[]} */ ([0, 1]).map((way) => {
    const places = pointsOf(markup).map((point) => point[way])
    return Math.min(EDGE - Math.max(...places), Math.max(-Math.min(...places), to[way] - from[way]))
  })
  return altered(markup, (point) => [Math.round(point[0] + (x ?? 0)), Math.round(point[1] + (y ?? 0))])
}

/** One step across and down. @param {Markup} markup @param {number} across @param {number} down */
export const nudged = (markup, across, down) => movedTo(markup, [0, 0], [across * STEP, down * STEP])

/** Larger, or smaller: an outline about its middle, an arrow from its tip.
 * @param {Markup} markup @param {boolean} isLarger @returns {Markup} */
export function sized(markup, isLarger) {
  if (markup.shape === 'note') return markup
  const factor = isLarger ? LARGER : 1 / LARGER
  const [x, y] = markup.shape === 'arrow' ? markup.to : middleOf(markup.points)
  const next = altered(markup, (point) => [within(x + (point[0] - x) * factor), within(y + (point[1] - y) * factor)])
  const points = pointsOf(next)
  return Math.max(reach(points, 0), reach(points, 1)) < SMALLEST ? markup : next
}

/** An arrow turned about its tip, on a picture of a ratio of width to height.
 * @param {Markup} markup @param {number} ratio @returns {Markup} */
export function turned(markup, ratio) {
  if (markup.shape !== 'arrow') return markup
  const { from, to } = markup
  const [dx, dy] = [(from[0] - to[0]) * ratio, from[1] - to[1]]
  const [cos, sin] = [Math.cos(TURN), Math.sin(TURN)]
  return { ...markup, from: [within(to[0] + (dx * cos - dy * sin) / ratio), within(to[1] + dx * sin + dy * cos)] }
}

/** Where its number stands: the top of an outline, the tail of an arrow, the place of a note.
 * @param {Markup} markup @returns {Point} */
export function anchorOf(markup) {
  if (markup.shape === 'arrow') return markup.from
  if (markup.shape === 'note') return markup.at
  return markup.points.reduce((top, point) => (point[1] < top[1] ? point : top))
}

/** The numbers of what has a note, from 1; null for what has none.
 * @param {Markup[]} markups @returns {(number | null)[]} */
export function numbersOf(markups) {
  let last = 0
  return markups.map(({ note }) => (note?.trim() ? (last += 1) : null))
}
