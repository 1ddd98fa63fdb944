// A line drawn over a field with a finger, a pen or the mouse. While it is drawn it is put on the screen directly: a
// drawing of the whole page would lag behind the finger.

/** From edge to edge of the field, as places are kept. */
export const EDGE = 10_000

/** Across and down, each from 0 to EDGE. @typedef {[number, number]} Point */

/**
 * @typedef {object} Pen
 * @property {(last: Point, point: Point) => boolean} saysMore whether a point is far enough from the one before to be
 * kept
 * @property {(field: SVGSVGElement, line: Point[]) => void} show puts the line on the screen; an empty one takes it off
 * @property {(line: Point[]) => void} done takes the line once it is drawn
 */

/** The line that is being drawn; nothing between lines. @type {Point[] | null} */
let line = null

/** What a field does with the pointer. @param {Pen} pen */
export function penOn({ saysMore, show, done }) {
  /** @param {PointerEvent} event */
  const draw = (event) => {
    const field = fieldOf(event)
    const points = event.getCoalescedEvents?.() ?? []
    for (const point of points.length > 0 ? points : [event]) {
      const place = placeOf(field, point)
      const last = line?.at(-1)
      if (!last || saysMore(last, place)) line?.push(place)
    }
    show(field, line ?? [])
  }
  /** @param {PointerEvent} event */
  const begin = (event) => {
    if (event.button !== 0) return
    // A second finger draws nothing, and takes back what the first has begun: two move the picture.
    if (!event.isPrimary) {
      line = null
      return show(fieldOf(event), [])
    }
    fieldOf(event).setPointerCapture(event.pointerId)
    line = []
    draw(event)
  }
  /** @param {PointerEvent} event */
  const goOn = (event) => line && fieldOf(event).hasPointerCapture(event.pointerId) && draw(event)
  /** @param {PointerEvent} event */
  const end = (event) => {
    const drawn = line
    line = null
    show(fieldOf(event), [])
    if (drawn && drawn.length > 0) done(drawn)
  }
  return { begin, goOn, end }
}

/** @param {PointerEvent} event */
const fieldOf = (event) => /** @type {SVGSVGElement} */ (event.currentTarget)

/** Where in the drawing, whatever margin is left beside it. @param {SVGSVGElement} field @param {{ clientX: number,
 * clientY: number }} point
 * @returns {Point} */
function placeOf(field, { clientX, clientY }) {
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(field.getScreenCTM()?.inverse())
  const { width, height } = field.viewBox.baseVal
  return [within((x / width) * EDGE), within((y / height) * EDGE)]
}

/** In the field, as a whole number. @param {number} place */
export const within = (place) => Math.round(Math.min(EDGE, Math.max(0, place)))
