// One photo, as large as the screen allows, with what is drawn over it.
/** @import { Drawn } from '../types/api.d.ts' */
/** @import { Recorded } from './photos.js' */
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { photoAddress } from '../backend.js'
import { tick } from '../controls/input.js'
import { append } from '../edits/queue.js'
import { drawingOn, markupField, markupForm } from '../markup/markup-form.js'
import { measure, overlay } from '../markup/overlay.js'
import { numbersOf } from '../markup/shape.js'
import { swap, toPart, walkOn } from '../route.js'
import { shownJob } from '../state.js'
import { words } from '../words.js'

const text = words.part

/** @param {string} job @param {Recorded} part @param {string} photo */
export function enlarged(job, part, photo) {
  const title = text.photo(part.photos.indexOf(photo) + 1, part.label)
  const drawn = part.drawn[photo] ?? []
  const markups = drawn.map(({ markup }) => markup)
  const drawing = drawingOn(photo)
  const back = toPart(job, part.part)
  const remove = () => {
    append(job, { do: 'remove-photo', part: part.part, photo })
    swap(back)
  }
  return {
    title,
    body: html`
      <div class="photo-frame">
        <img class="enlarged" src=${photoAddress(photo, 'screen')} alt=${title} @load=${measure(photo)}>
        ${drawing.touched ? markupField(photo, markups) : overlay(photo, markups)}
      </div>
      ${drawing.touched ? markupForm(job, part, photo) : [pick(job, part, photo), drawnList(job, drawn)]}`,
    bar: drawing.touched
      ? html`
        <div class="bar">
          <button type="button" @click=${drawing.forget}>${words.markup.discard}</button>
          <button class="primary" form="markup">${words.markup.save}</button>
        </div>`
      : html`
        <div class="bar">
          <button type="button" @click=${remove}>${text.removePhoto}</button>
          <button type="button" @click=${() => drawing.enter({})}>${words.markup.draw}</button>
          <a class="button primary" href=${back} @click=${walkOn}>${text.back}</a>
        </div>`,
  }
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

/** @param {string} job @param {Drawn[]} drawn */
function drawnList(job, drawn) {
  if (drawn.length === 0) return nothing
  const numbers = numbersOf(drawn.map(({ markup }) => markup))
  return html`
    <h2>${words.markup.drawn}</h2>
    <ul class="drawn-list">
      ${drawn.map(({ edit, markup }, n) => {
        const shape = words.markup.shapes[markup.shape]
        const note = markup.note?.trim()
        // What is still on its way has no id yet: it can be taken off once it is saved.
        const takeOff = () => edit && append(job, { do: 'undo', edit })
        return html`<li>
          <span class="drawn-words">${note ? `${numbers[n]} ${note}` : shape}</span>
          <button type="button" aria-label=${words.markup.takeOff(note || shape)}
            aria-disabled=${edit ? 'false' : 'true'} @click=${takeOff}>${words.markup.off}</button>
        </li>`
      })}
    </ul>`
}
