// A part found by the label on its bag: photographed, or typed.
import { html } from '../vendor/lit-html/lit-html.js'
import { findLabel, readLabel, surroundings } from '../backend.js'
import { fileButton } from '../controls/file-button.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { swap, toPart } from '../route.js'
import { attempt, redraw, state } from '../state.js'
import { words } from '../words.js'

const text = words.label

let isReading = false

export function label() {
  const form = formOf('label', () => ({ code: '' }))
  const { entered, refusal, enter, send } = form
  const find = async (/** @type {Event} */ event) => {
    event.preventDefault()
    await send(async ({ code }) => show(await findLabel(code)))
  }
  return {
    title: words.screens.label,
    body: html`
      <p class="hint">${text.photoHint}</p>
      <section class="photo-buttons" aria-label=${text.photo}>
        ${surroundings.hasCamera
          ? fileButton({ label: text.camera, accept: 'image/*', camera: true, primary: true, take: read })
          : ''}
        ${fileButton({
          label: text.choose,
          accept: surroundings.galleryAccepts,
          primary: !surroundings.hasCamera,
          take: read,
        })}
      </section>
      <p class="hint" role="status">${isReading ? text.reading : ''}</p>
      <form class="entry" id="label" @submit=${find}>
        ${foundDraft(form)}
        ${input({
          id: 'label-code',
          label: text.code,
          value: entered.code,
          hint: text.codeHint,
          kind: 'code',
          enterKey: 'search',
          enter: (code) => enter({ code }),
        })}
        <p role="alert" class="refusal">${refusal}</p>
      </form>`,
    bar: html`
      <div class="bar">
        ${state.cameFrom ? html`<a class="button" href=${state.cameFrom}>${words.frame.backToJob}</a>` : ''}
        <button class="primary" form="label">${text.find}</button>
      </div>`,
  }
}

/** @param {File[]} files */
async function read([picture]) {
  if (!picture) return
  state.alert = ''
  isReading = true
  redraw()
  await attempt(async () => show(await readLabel(picture)))
  isReading = false
  redraw()
}

/** The part, in place of this screen: Back leads to where the label was asked for.
 * @param {{ job: string, part: string }} found */
const show = ({ job, part }) => swap(toPart(job, part))
