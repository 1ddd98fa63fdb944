// One cap or rod: what stands on it, where, and which way it points. It opens with the mark that is likely there, so
// that the thumb's button notes it where all is as it should be, and says what it notes.
/** @import { JobView, Mark, MarkView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { choice, optionsOf } from '../controls/choice.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { append, submit } from '../edits/queue.js'
import { readdress } from '../readdress.js'
import { toScreen } from '../route.js'
import { redraw } from '../state.js'
import { words } from '../words.js'
import { inWords } from './in-words.js'
import { likelyMark } from './likely.js'
import { placeId, placeKind, placeNumber } from './place.js'

const text = words.marks
/** @type {Mark} */
const BLANK = { text: '', marking: 'found', side: null, points: null }

/** What was noted last and what comes next, for those who listen. */
let said = ''
let notedAt = 0

/** @param {JobView} view @param {MarkView} asked */
const entryOf = (view, asked) =>
  formOf(
    `mark ${view.job} ${placeId(asked.place)}`,
    () => asked.mark ?? likelyMark(view.assessment.marks.places, asked) ?? BLANK,
  )

/** @param {JobView} view @param {MarkView} asked */
export function markForm(view, asked) {
  const form = entryOf(view, asked)
  const { entered: mark, refusal, enter } = form
  const number = placeNumber(asked.place)
  const twin = twinOf(view, asked, mark)
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    note(view, asked)
  }
  return html`
    <form class="entry mark-form" id="mark" aria-labelledby="mark-asked" @submit=${save}>
      <h2 id="mark-asked">${asked.label}</h2>
      ${foundDraft(form)}
      <div class="mark-text">
        <label class="field">
          <span class="field-label">${text.text}</span>
          <input type="text" autocomplete="off" autocapitalize="characters" spellcheck="false" enterkeyhint="done"
            maxlength="20" aria-describedby="mark-hint" .value=${live(mark.text)}
            @input=${(/** @type {InputEvent} */ event) =>
              enter({ text: /** @type {HTMLInputElement} */ (event.target).value })}>
        </label>
        <button type="button" @click=${() => enter({ text: number })}>${text.fillIn(number)}</button>
      </div>
      <p class=${twin ? 'wrong' : 'hint'} id="mark-hint">${twin ? text.already(twin.label) : text.textHint}</p>
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
      ${choice({
        name: 'marking',
        legend: text.marking,
        options: optionsOf(text.markings),
        value: mark.marking,
        choose: (marking) => enter({ marking }),
      })}
      <p role="alert" class="refusal">${refusal}</p>
    </form>`
}

/** The thumb's buttons, for the place that is asked for. @param {JobView} view @param {MarkView} asked */
export function markBar(view, asked) {
  const { entered: mark } = entryOf(view, asked)
  const isReady = mark.text.trim() !== ''
  /** @type {Mark} */
  const made = { ...mark, text: placeNumber(asked.place), marking: 'made' }
  const isMine = asked.mark !== null || mark.marking === 'made'
  return html`
    <div class="bar mark-bar">
      <button type="button" aria-label=${text.skipName(asked.label)}
        @click=${() => goOn(view, asked)}>${text.skip}</button>
      ${isMine ? '' : html`
        <button type="button" class="mark-make" @click=${() => note(view, asked, made)}>${text.nothingThere(
          inWords({ ...made, marking: 'found' }),
        )}</button>`}
      <button class="primary mark-note" form="mark">${isReady
        ? html`<span class="mark-note-place">${text.noteMark(asked.label)}</span> <span>${inWords(mark)}</span>`
        : text.save}</button>
    </div>`
}

/** What was noted last, told once. */
export const lastNoted = () => html`<p class="unseen" role="status">${said}</p>`

/** Notes what was entered, or a mark in its place, and goes on at once: the hand is faster than the store.
 * @param {JobView} view @param {MarkView} asked @param {Mark} [made] */
function note(view, asked, made) {
  // The second tap of a double tap would note the next cap unseen.
  if (Date.now() - notedAt < 300) return
  const form = entryOf(view, asked)
  const mark = made ?? form.entered
  const change = /** @type {const} */ ({ do: 'note-mark', place: asked.place, mark })
  // Nothing is entered: the core says in its own place what is missing.
  if (!mark.text.trim()) return form.send(() => submit(view.job, change))
  notedAt = Date.now()
  append(view.job, change).then((isSaved) => isSaved || form.enter(mark))
  form.forget()
  said = text.noted(asked.label, inWords(mark), following(view, asked)?.label ?? '')
  return goOn(view, asked)
}

/** @param {JobView} view @param {MarkView} asked */
function goOn(view, asked) {
  const next = following(view, asked)
  readdress(toScreen(view.job, 'marks', next && placeId(next.place)))
  redraw()
  queueMicrotask(() => document.querySelector('#mark-asked')?.scrollIntoView({ block: 'nearest' }))
}

/** The next place without a mark, counted on from here. @param {JobView} view @param {MarkView} asked */
function following(view, asked) {
  const { places } = view.assessment.marks
  const here = places.indexOf(asked)
  return [...places.slice(here + 1), ...places.slice(0, here)].find(({ mark }) => !mark)
}

/** Another of its kind with the same mark: they would be mistaken for each other.
 * @param {JobView} view @param {MarkView} asked @param {Mark} mark */
const twinOf = (view, asked, { text: stamped }) =>
  view.assessment.marks.places.find((one) =>
    one !== asked && one.mark && placeKind(one.place) === placeKind(asked.place)
    && alike(one.mark.text) === alike(stamped))

/** @param {string} stamped */
const alike = (stamped) => stamped.replace(/\s/g, '').toUpperCase()
