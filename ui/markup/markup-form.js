// Drawing over a photo: an outline, an arrow or a note, with a finger, or with buttons where a finger can't draw.
/** @import { Markup } from '../types/api.d.ts' */
/** @import { Recorded } from '../part/photos.js' */
/** @import { Form } from '../controls/form.js' */
/** @import { Shape } from './shape.js' */
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { choice } from '../controls/choice.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { penOn } from '../controls/pen.js'
import { submit } from '../edits/queue.js'
import { words } from '../words.js'
import { lines, ratioOf, through } from './overlay.js'
import { drawn, nudged, saysMore, sized, startOf, turned } from './shape.js'

const text = words.markup

/** @typedef {{ markup: Markup }} Entered */

/** What is being drawn on a photo and not saved yet; it is open once it is touched. The same picture may be in another
 * job too.
 * @param {string} job @param {string} part @param {string} photo @returns {Form<Entered>} */
export const drawingOn = (job, part, photo) =>
  formOf(`markup ${job} ${part} ${photo}`, () => ({ markup: startOf('outline', ratioOf(photo) ?? 1, '') }))

/** The field over the picture, with what is there and what is being drawn.
 * @param {string} photo @param {Form<Entered>} drawing @param {Markup[]} saved */
export function markupField(photo, { entered: { markup }, enter }, saved) {
  const ratio = ratioOf(photo)
  if (!ratio) return nothing
  const { begin, goOn, end } = penOn({
    saysMore,
    show: (field, line) => show(field, line.length > 0 ? through(line, ratio) : ''),
    done: (line) => enter({ markup: drawn(markup, line) }),
  })
  return html`<svg class="overlay markup-field" viewBox="0 0 ${1000 * ratio} 1000" role="img"
    aria-label=${text.field(text.shapes[markup.shape])}
      @pointerdown=${begin} @pointermove=${goOn} @pointerup=${end} @pointercancel=${end}>
      <rect class="markup-ground" width=${1000 * ratio} height="1000"/>
      ${lines(saved, ratio)}
      <g class="markup-before">${lines([markup], ratio, saved)}</g>
      <path class="rim markup-now"/><path class="line markup-now"/>
    </svg>`
}

/** @param {string} job @param {Recorded} part @param {string} photo */
export function markupForm(job, part, photo) {
  const form = drawingOn(job, part.part, photo)
  const { entered: { markup }, enter, refusal, send } = form
  const ratio = ratioOf(photo) ?? 1
  /** @param {Event} event */
  const save = (event) => {
    event.preventDefault()
    send((entered) => submit(job, { do: 'mark-up', part: part.part, photo, markup: entered.markup }))
  }
  return html`
    <form class="entry" id="markup" @submit=${save}>
      ${foundDraft(form)}
      ${choice({
        name: 'markup-shape',
        legend: text.shape,
        options: shapes,
        value: markup.shape,
        choose: (shape) => enter({ markup: startOf(shape, ratio, markup.note ?? '') }),
      })}
      <p class="hint">${text.hints[markup.shape]}</p>
      <details class="fold">
        <summary>${text.byButtons}</summary>
        <div class="markup-pad">${pad(markup, ratio, (next) => enter({ markup: next }))}</div>
      </details>
      ${input({
        id: 'markup-note',
        label: text.note,
        value: markup.note ?? '',
        enter: (note) => enter({ markup: { ...markup, note } }),
        hint: text.noteHint,
        enterKey: 'done',
      })}
      <p role="alert" class="refusal">${refusal}</p>
    </form>`
}

/** @type {{ value: Shape, label: string }[]} */
const shapes = [
  { value: 'outline', label: text.shapes.outline },
  { value: 'arrow', label: text.shapes.arrow },
  { value: 'note', label: text.shapes.note },
]

/** @param {Markup} markup @param {number} ratio @param {(markup: Markup) => void} place */
function pad(markup, ratio, place) {
  const button = (/** @type {string} */ label, /** @type {string} */ sign, /** @type {Markup} */ next) =>
    html`<button type="button" aria-label=${label} @click=${() => place(next)}>${sign}</button>`
  return html`
    ${button(text.left, '←', nudged(markup, -1, 0))}
    ${button(text.right, '→', nudged(markup, 1, 0))}
    ${button(text.up, '↑', nudged(markup, 0, -1))}
    ${button(text.down, '↓', nudged(markup, 0, 1))}
    ${markup.shape === 'note' ? nothing : html`
      ${button(text.larger, '+', sized(markup, true))}
      ${button(text.smaller, '−', sized(markup, false))}`}
    ${markup.shape === 'arrow' ? button(text.turn, '↻', turned(markup, ratio)) : nothing}`
}

/** The line of the finger, in place of what was drawn before. @param {SVGSVGElement} field @param {string} path */
function show(field, path) {
  field.classList.toggle('is-drawing', path !== '')
  field.querySelectorAll('.markup-now').forEach((line) => line.setAttribute('d', path))
}
