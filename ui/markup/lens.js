// What of a picture is seen through its frame: how much larger than whole, and which point of it stands in the middle.

/** The picture at most so much larger than whole. */
const MOST = 8

/**
 * @typedef {object} Lens
 * @property {number} zoom 1 shows the whole picture
 * @property {number} x what stands in the middle of the frame, as a share of the picture from left to right
 * @property {number} y the same from top to bottom
 *
 * @typedef {object} Frame
 * @property {number} width
 * @property {number} height
 * @property {number} ratio width over height of the picture in it
 */

/** @type {Lens} */
export const WHOLE = { zoom: 1, x: 0.5, y: 0.5 }

/** Larger or smaller; what lies under a point stays there. The point counts from the middle of the frame.
 * @param {Lens} lens @param {Frame} frame @param {number} factor @param {number} [across] @param {number} [down]
 * @returns {Lens} */
export function zoomed(lens, frame, factor, across = 0, down = 0) {
  const zoom = Math.min(MOST, Math.max(1, lens.zoom * factor))
  const [width, height] = whole(frame)
  const shift = 1 / lens.zoom - 1 / zoom
  return kept({ zoom, x: lens.x + (across / width) * shift, y: lens.y + (down / height) * shift }, frame)
}

/** The picture pushed along. @param {Lens} lens @param {Frame} frame @param {number} across @param {number} down */
export function pushed(lens, frame, across, down) {
  const [width, height] = whole(frame)
  const { zoom, x, y } = lens
  return kept({ zoom, x: x - across / (width * zoom), y: y - down / (height * zoom) }, frame)
}

/** The size of the whole picture in its frame. @param {Frame} frame @returns {[number, number]} */
function whole({ width, height, ratio }) {
  const across = Math.min(width, height * ratio)
  return [across, across / ratio]
}

/** No edge of the picture comes farther in than it must. @param {Lens} lens @param {Frame} frame @returns {Lens} */
function kept({ zoom, x, y }, frame) {
  const [width, height] = whole(frame)
  const inside = (/** @type {number} */ place, /** @type {number} */ half) =>
    half >= 0.5 ? 0.5 : Math.min(1 - half, Math.max(half, place))
  return { zoom, x: inside(x, frame.width / (2 * width * zoom)), y: inside(y, frame.height / (2 * height * zoom)) }
}
