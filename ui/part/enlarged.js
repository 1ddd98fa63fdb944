// One photo over the whole screen, with what is drawn over it, or two side by side.
/** @import { Drawn } from '../types/api.d.ts' */
/** @import { Screen } from '../frame/screens.js' */
/** @import { Recorded } from './photos.js' */
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { surroundings } from '../backend.js'
import { fileButton } from '../controls/file-button.js'
import { tick } from '../controls/input.js'
import { append, photographPart } from '../edits/queue.js'
import { drawingOn, markupField, markupForm } from '../markup/markup-form.js'
import { overlay } from '../markup/overlay.js'
import { photoFrame } from '../markup/photo-frame.js'
import { numbersOf } from '../markup/shape.js'
import { zoomBar } from '../markup/zoom-bar.js'
import { CHOOSING, go, readRoute, SAVING, swap, toPair, toPart, walkOn } from '../route.js'
import { photograph } from '../shots/take.js'
import { shownJob, state } from '../state.js'
import { words } from '../words.js'
import { addressOf, nameOf, photosOf } from './all-photos.js'
import { chooseBeside } from './choose-beside.js'
import { pair } from './pair.js'

const text = words.part

/** @param {string} job @param {Recorded[]} walk every part in the order of the strip-down @param {Recorded} part
 * @returns {Screen} */
export function enlarged(job, walk, part) {
  const { photo, beside, isRetake } = state.route
  const here = { part, photo }
  if (beside === CHOOSING) return chooseBeside(job, walk, here)
  // From memory, until it is saved.
  const taken = beside === SAVING ? part.photos.filter((own) => own.startsWith('blob:')).at(-1) : undefined
  const second = taken ? { part, photo: taken } : photosOf(walk).find((other) => other.photo === beside)
  return second ? pair(job, here, second, isRetake) : single(job, walk, part, photo)
}

/** @param {string} job @param {Recorded[]} walk @param {Recorded} part @param {string} photo @returns {Screen} */
function single(job, walk, part, photo) {
  const title = nameOf({ part, photo })
  const drawn = part.drawn[photo] ?? []
  const markups = drawn.map(({ markup }) => markup)
  const drawing = drawingOn(job, part.part, photo)
  const all = photosOf(walk)
  const place = all.findIndex((other) => other.part === part && other.photo === photo)
  const [previous, next] = [all[place - 1], all[place + 1]]
  const step = (/** @type {1 | -1} */ way) => {
    const to = way === 1 ? next : previous
    if (to) swap(addressOf(job, to))
  }
  return {
    title,
    fills: true,
    body: html`
      ${photoFrame({
        photo,
        name: title,
        over: drawing.touched ? markupField(photo, drawing, markups) : overlay(photo, markups),
        isDrawnOn: drawing.touched,
        step: drawing.touched ? undefined : step,
      })}
      ${drawing.touched ? markupForm(job, part, photo) : about(job, part, photo, drawn)}`,
    bar: drawing.touched
      ? html`
        ${zoomBar()}
        <div class="bar">
          <button type="button" @click=${drawing.forget}>${words.markup.discard}</button>
          <button class="primary" form="markup">${words.markup.save}</button>
        </div>`
      : html`
        ${zoomBar({ job, previous, next })}
        <div class="bar photo-bar">
          <button type="button" @click=${() => drawing.enter({})}>${words.markup.draw}</button>
          ${retakeButton(job, part, photo)}
          <a class="button" href=${toPair(job, part.part, photo, CHOOSING)}>${text.beside}</a>
          <a class="button primary" href=${toPart(job, part.part)} @click=${walkOn}>${text.back}</a>
        </div>`,
  }
}

/** The old picture stays until the person has seen both.
 * @param {string} job @param {Recorded} part @param {string} photo */
function retakeButton(job, part, photo) {
  /** @param {File[]} files */
  const take = ([file]) => {
    if (!file) return
    const waiting = toPair(job, part.part, photo, SAVING, true)
    photographPart(job, part.part, file, (name) => {
      if (location.hash !== waiting) return
      // At once, for the picture goes by this name from now on.
      const address = toPair(job, part.part, photo, name, true)
      history.replaceState(null, '', address)
      state.route = readRoute(address)
    })
    go(waiting)
  }
  const { hasCamera, phone } = surroundings
  // The device's own camera stands before the page meanwhile, so there is nothing to wait at.
  if (phone.take_photo) {
    const compare = (/** @type {string} */ name) => go(toPair(job, part.part, photo, name, true))
    return html`<button type="button"
      @click=${() => photograph(job, { part: part.part }, compare)}>${text.retake}</button>`
  }
  const accept = hasCamera ? 'image/*' : surroundings.galleryAccepts
  return fileButton({ label: text.retake, accept, camera: hasCamera, take })
}

/** What is noted on it and what else can be done with it, under one line.
 * @param {string} job @param {Recorded} part @param {string} photo @param {Drawn[]} drawn */
function about(job, part, photo, drawn) {
  const numbers = numbersOf(drawn.map(({ markup }) => markup))
  const lines = drawn.map(({ markup }, n) => {
    const note = markup.note?.trim()
    return note ? `${numbers[n]} ${note}` : words.markup.shapes[markup.shape]
  })
  const remove = () => {
    append(job, { do: 'remove-photo', part: part.part, photo })
    go(toPart(job, part.part))
  }
  return html`
    <details class="photo-about">
      <summary><span>${lines.length > 0 ? lines.join(' · ') : text.about}</span></summary>
      ${drawn.length === 0 ? nothing : html`
        <ul class="drawn-list">${drawn.map((one, n) => drawnLine(job, one, lines[n] ?? ''))}</ul>`}
      ${pick(job, part, photo)}
      <button type="button" @click=${remove}>${text.removePhoto}</button>
    </details>`
}

/** Whether the customer's page shows it. @param {string} job @param {Recorded} part @param {string} photo */
function pick(job, { part }, photo) {
  const isShown = shownJob()?.shown_photos.some(([own, shown]) => own === part && shown === photo) ?? false
  return tick({
    label: text.showPhoto,
    checked: isShown,
    enter: (shown) => append(job, { do: 'show-photo', part, photo, shown }),
  })
}

/** @param {string} job @param {Drawn} drawn @param {string} line */
function drawnLine(job, { edit, markup }, line) {
  // What is still on its way has no id yet: it can be taken off once it is saved.
  const takeOff = () => edit && append(job, { do: 'undo', edit })
  return html`<li>
    <span class="drawn-words">${line}</span>
    <button type="button" aria-label=${words.markup.takeOff(markup.note?.trim() || words.markup.shapes[markup.shape])}
      aria-disabled=${edit ? 'false' : 'true'} @click=${takeOff}>${words.markup.off}</button>
  </li>`
}
