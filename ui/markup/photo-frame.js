// A photo in a frame: two fingers, the wheel, keys and buttons zoom, a drag moves what is zoomed. While it is moved it
// is put on the screen directly: a drawing of the whole page would lag behind the finger.
/** @import { Lens } from './lens.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { photoAddress } from '../backend.js'
import { redraw } from '../state.js'
import { words } from '../words.js'
import { pushed, WHOLE, zoomed } from './lens.js'
import { measure, ratioOf } from './overlay.js'

/** One step of a button or key. */
const STEP = 1.5
/** What a double tap shows larger. */
const CLOSE = 3
/** A finger that moves no farther than this has tapped, in pixels. */
const TAP = 10
/** Two taps within this time are one double tap, in milliseconds. */
const DOUBLE = 350
/** A finger that goes this far across a whole picture asks for the next one, in pixels. */
const SWIPE = 60
/** One press of an arrow key, as a share of the frame. */
const PUSH = 0.15

/**
 * @typedef {object} Framed
 * @property {string} photo
 * @property {string} name
 * @property {unknown} over what lies over the picture
 * @property {boolean} [isDrawnOn] one finger draws, so that only two move the picture
 * @property {(way: 1 | -1) => void} [step] to the next photo or the one before
 *
 * @typedef {object} Finger
 * @property {HTMLElement} frame
 * @property {number} x
 * @property {number} y
 */

/** @type {Map<string, Lens>} */
const lenses = new Map()

/** The fingers on the screen. @type {Map<number, Finger>} */
const fingers = new Map()

/** From the first finger down to the last one up. */
let gesture = { x: 0, y: 0, isOne: true, isTap: true }
let tapped = { frame: /** @type {HTMLElement | null} */ (null), at: 0, x: 0, y: 0 }

/** Every photo is first seen whole. */
export const seeWhole = () => lenses.clear()

/** Whether anything is seen larger than whole. */
export const isZoomed = () => [...lenses.values()].some(({ zoom }) => zoom > 1)

/** @param {Framed} framed */
export function photoFrame(framed) {
  const { photo, name, over } = framed
  const onWheel = { handleEvent: turnWheel, passive: false }
  const isDrawnOn = framed.isDrawnOn ?? false
  // Keyed, so that a picture never stands where the one before was until it is there.
  return html`${repeat([photo], () => photo, () => html`
    <div class="photo-frame" role="group" tabindex="0" aria-label=${words.markup.frame(name)}
      data-photo=${photo} .style=${styleOf(photo)}
      @pointerdown=${(/** @type {PointerEvent} */ event) => touch(event, isDrawnOn)}
      @pointermove=${(/** @type {PointerEvent} */ event) => move(event, isDrawnOn)}
      @pointerup=${(/** @type {PointerEvent} */ event) => release(event, framed)}
      @pointercancel=${(/** @type {PointerEvent} */ event) => fingers.delete(event.pointerId)}
      @wheel=${onWheel} @keydown=${(/** @type {KeyboardEvent} */ event) => press(event, framed)}>
      <div class="photo-sheet">
        <img class="enlarged" src=${photoAddress(photo, 'screen')} alt=${name} draggable="false"
          @load=${measure(photo)}>
        ${over}
      </div>
    </div>`)}`
}

/** Larger, smaller, or whole again: all photos on the screen. @param {'larger' | 'smaller' | 'whole'} way */
export function zoomAll(way) {
  const frames = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.photo-frame')])
  for (const frame of frames) zoomTo(frame, way)
  redraw()
}

/** @param {HTMLElement} frame @param {'larger' | 'smaller' | 'whole'} way */
function zoomTo(frame, way) {
  if (way === 'whole') return look(frame, WHOLE)
  look(frame, zoomed(lensOf(frame), boxOf(frame), way === 'larger' ? STEP : 1 / STEP))
}

/** @param {PointerEvent} event @param {boolean} isDrawnOn */
function touch(event, isDrawnOn) {
  if (event.button > 1) return
  const frame = frameOf(event)
  const { pointerId, clientX: x, clientY: y } = event
  if (event.isPrimary) fingers.clear()
  fingers.set(pointerId, { frame, x, y })
  if (fingers.size === 1) gesture = { x, y, isOne: true, isTap: true }
  else gesture.isOne = false
  // The line that the first finger draws keeps it.
  if (!isDrawnOn || event.button === 1) frame.setPointerCapture(pointerId)
  // The middle button moves the picture, and scrolls nothing.
  if (event.button === 1) event.preventDefault()
}

/** @param {PointerEvent} event @param {boolean} isDrawnOn */
function move(event, isDrawnOn) {
  const finger = fingers.get(event.pointerId)
  if (!finger) return
  const { frame, x, y } = finger
  const { clientX, clientY } = event
  if (Math.hypot(clientX - gesture.x, clientY - gesture.y) > TAP) gesture.isTap = false
  const other = [...fingers].find(([id, own]) => id !== event.pointerId && own.frame === frame)?.[1]
  const isDrawing = isDrawnOn && !other && (event.buttons & 4) === 0
  fingers.set(event.pointerId, { frame, x: clientX, y: clientY })
  if (isDrawing) return
  const box = boxOf(frame)
  if (!other) return look(frame, pushed(lensOf(frame), box, clientX - x, clientY - y))
  const factor = distance({ x: clientX, y: clientY }, other) / Math.max(1, distance({ x, y }, other))
  const across = (clientX + other.x) / 2 - box.middleX
  const down = (clientY + other.y) / 2 - box.middleY
  const along = pushed(lensOf(frame), box, (clientX - x) / 2, (clientY - y) / 2)
  look(frame, zoomed(along, box, factor, across, down))
}

/** @param {PointerEvent} event @param {Framed} framed */
function release(event, { isDrawnOn, step }) {
  const finger = fingers.get(event.pointerId)
  fingers.delete(event.pointerId)
  if (!finger || fingers.size > 0) return
  redraw()
  if (isDrawnOn || !gesture.isOne || event.button > 0) return
  const { frame } = finger
  const { clientX: x, clientY: y, timeStamp: at } = event
  const isWhole = lensOf(frame).zoom === 1
  if (!gesture.isTap) {
    const [across, down] = [x - gesture.x, y - gesture.y]
    if (isWhole && Math.abs(across) > SWIPE && Math.abs(across) > 2 * Math.abs(down)) step?.(across < 0 ? 1 : -1)
    return
  }
  const isDouble = tapped.frame === frame && at - tapped.at < DOUBLE && distance(tapped, { x, y }) < 3 * TAP
  tapped = { frame: isDouble ? null : frame, at, x, y }
  if (!isDouble) return
  const box = boxOf(frame)
  look(frame, isWhole ? zoomed(WHOLE, box, CLOSE, x - box.middleX, y - box.middleY) : WHOLE)
}

/** @param {WheelEvent} event */
function turnWheel(event) {
  event.preventDefault()
  const frame = frameOf(event)
  const box = boxOf(frame)
  // Lines or pixels; two fingers on a touch pad come as a wheel with Ctrl, in small steps.
  const turned = event.deltaY * (event.deltaMode === 1 ? 30 : 1) * (event.ctrlKey ? 5 : 1)
  const factor = Math.exp(-Math.min(300, Math.max(-300, turned)) / 500)
  look(frame, zoomed(lensOf(frame), box, factor, event.clientX - box.middleX, event.clientY - box.middleY))
  redraw()
}

/** @type {Record<string, 'larger' | 'smaller' | 'whole'>} */
const ZOOM_KEYS = { '+': 'larger', '=': 'larger', '-': 'smaller', '−': 'smaller', '_': 'smaller', 0: 'whole' }
/** @type {Record<string, [number, number]>} */
const ARROWS = { ArrowLeft: [1, 0], ArrowRight: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }

/** @param {KeyboardEvent} event @param {Framed} framed */
function press(event, { step }) {
  if (event.ctrlKey || event.metaKey || event.altKey) return
  const frame = frameOf(event)
  const zoom = ZOOM_KEYS[event.key]
  const [across, down] = ARROWS[event.key] ?? [0, 0]
  if (!zoom && !across && !down) return
  event.preventDefault()
  const box = boxOf(frame)
  if (zoom) zoomTo(frame, zoom)
  else if (lensOf(frame).zoom > 1) {
    look(frame, pushed(lensOf(frame), box, across * PUSH * box.width, down * PUSH * box.height))
  } else if (across) step?.(across < 0 ? 1 : -1)
  redraw()
}

/** @param {HTMLElement} frame @param {Lens} lens */
function look(frame, lens) {
  lenses.set(photoOf(frame), lens)
  frame.style.cssText = styleOf(photoOf(frame))
}

/** Read by the styles, which lay the picture out. @param {string} photo */
function styleOf(photo) {
  const { zoom, x, y } = lenses.get(photo) ?? WHOLE
  return `--ratio: ${ratioOf(photo) ?? 1}; --zoom: ${zoom}; --x: ${x}; --y: ${y}`
}

/** @param {HTMLElement} frame */
const photoOf = (frame) => frame.dataset.photo ?? ''
/** @param {HTMLElement} frame */
const lensOf = (frame) => lenses.get(photoOf(frame)) ?? WHOLE
/** @param {Event} event */
const frameOf = (event) => /** @type {HTMLElement} */ (event.currentTarget)

/** @param {HTMLElement} frame */
function boxOf(frame) {
  const { left, top, width, height } = frame.getBoundingClientRect()
  return { width, height, ratio: ratioOf(photoOf(frame)) ?? 1, middleX: left + width / 2, middleY: top + height / 2 }
}

/** @param {{ x: number, y: number }} one @param {{ x: number, y: number }} other */
const distance = (one, other) => Math.hypot(one.x - other.x, one.y - other.y)
