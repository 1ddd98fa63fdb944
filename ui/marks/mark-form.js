// One cap or rod: what stands on it, where, and which way it points.
/** @import { JobView, Mark, MarkView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { choice, optionsOf } from '../controls/choice.js'
import { formOf } from '../controls/form.js'
import { submit } from '../edits/queue.js'
import { swap, toScreen, walkOn } from '../route.js'
import { words } from '../words.js'
import { placeId, placeNumber } from './place.js'

const text = words.marks
/** @type {Mark} */
const BLANK = { text: '', marking: 'found', side: null, points: null }

/** @param {JobView} view @param {MarkView} asked */
export function markForm(view, asked) {
  const { place } = asked
  const { entered: mark, refusal, enter, send } = formOf(
    `mark ${view.job} ${placeId(place)}`,
    () => asked.mark ?? BLANK,
  )
  const number = placeNumber(place)
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    const next = following(view, asked)
    if (await send((mark) => submit(view.job, { do: 'note-mark', place, mark }))) swap(next)
  }
  return html`
    <form class="entry mark-form" aria-labelledby="mark-asked" @submit=${save}>
      <h2 id="mark-asked">${asked.label}</h2>
      <div class="mark-text">
        <label class="field">
          <span class="field-label">${text.text}</span>
          <input type="text" autocomplete="off" autocapitalize="characters" maxlength="20" .value=${live(mark.text)}
            @input=${(/** @type {InputEvent} */ event) =>
              enter({ text: /** @type {HTMLInputElement} */ (event.target).value })}>
          <span class="hint">${text.textHint}</span>
        </label>
        <button type="button" @click=${() => enter({ text: number })}>${text.fillIn(number)}</button>
      </div>
      ${choice({
        name: 'marking',
        legend: text.marking,
        options: optionsOf(text.markings),
        value: mark.marking,
        choose: (marking) => enter({ marking }),
      })}
      ${choice({
        name: 'side',
        legend: text.side,
        options: [...optionsOf(text.sides), { value: null, label: text.notSeen }],
        value: mark.side,
        choose: (side) => enter({ side }),
      })}
      ${choice({
        name: 'points',
        legend: text.points,
        options: [...optionsOf(text.ends), { value: null, label: text.notSeen }],
        value: mark.points,
        choose: (points) => enter({ points }),
      })}
      <p role="alert" class="refusal">${refusal}</p>
      <div class="bar-inline">
        <a class="button" href=${following(view, asked)} @click=${walkOn}>${text.skip}</a>
        <button class="primary">${text.save}</button>
      </div>
    </form>`
}

/** The next place without a mark, counted on from here. @param {JobView} view @param {MarkView} asked */
function following(view, asked) {
  const { places } = view.assessment.marks
  const here = places.indexOf(asked)
  const next = [...places.slice(here + 1), ...places.slice(0, here)].find(({ mark }) => !mark)
  return toScreen(view.job, 'marks', next && placeId(next.place))
}
