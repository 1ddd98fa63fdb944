// The entry and the big keys under it. The entry is a real field: a keyboard, or a micrometer that is one, types into
// it; the keys write into the same field and leave the keyboard there.
/** @import { Bench } from './pad.js' */
/** @import { Step } from './walk.js' */
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { UNIT_MARKS, withUnit } from '../lengths.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { signed } from './entry.js'
import { move, placeName, shown, skip, take, type } from './pad.js'
import { keepFocus } from './places.js'
import { neighbour, unitFor, useOf } from './reading.js'
import { instrumentFor, settingOf, turnUnit } from './tools.js'

const text = words.measure
const keys = text.keys

/** @param {Bench} here */
export function entryAndKeys(here) {
  const { step } = here
  const unit = unitFor(here)
  const name = step ? placeName(step) : text.walkDone
  return html`
    <div class="pad">
      <div class="pad-entry">
        <p id="pad-refusal" class="refusal" role="alert">${shown.refusal}</p>
        ${shown.refusal ? '' : placeLine(here)}
        <input class="pad-input" type="text" inputmode="none" autocomplete="off" autocapitalize="off" spellcheck="false"
          enterkeyhint="next" maxlength="60"
          aria-label=${step ? text.entryName(name, text.units[unit]) : name}
          aria-describedby=${shown.refusal ? 'pad-refusal' : nothing}
          .value=${live(shown.typed)} @input=${onInput} @keydown=${onKey}>
        <span class="entry-unit" aria-hidden="true">${UNIT_MARKS[unit]}</span>
      </div>
      ${keyBlock(here)}
      <p class="unseen" role="status">${shown.said}</p>
    </div>`
}

/** Where the micrometer goes, to be read from the bench. @param {Bench} here */
function placeLine(here) {
  const { step } = here
  const beside = aside(here)
  return html`
    <p class="pad-place">
      ${step
        ? html`<span class="pad-part">${step.part.label}</span> <strong class="pad-where">${whereOn(step)}</strong>`
        : html`<strong class="pad-where">${text.walkDone}</strong>`}
      ${beside ? html`<span class="pad-aside">${beside}</span>` : ''}
    </p>`
}

/** What explains the quantity in brackets is said in the set-up. @param {Step} step */
const whereOn = ({ words: what, label }) =>
  capitalised([what === 'diameter' && label ? '' : what.replace(/ \(.*\)$/, ''), label].filter(Boolean).join(', '))

/** What else must be known to read the number right. @param {Bench} here */
function aside(here) {
  const setTo = settingOf(useOf(here)).setTo.trim()
  const back = here.steps.find(({ id }) => id === shown.back)
  return [
    setTo ? text.differenceFrom(withUnit(setTo, unitFor(here))) : '',
    back ? text.thenBack(placeName(back)) : '',
  ].filter(Boolean).join(' · ')
}

/** @param {Bench} here */
function keyBlock(here) {
  const unit = unitFor(here)
  const other = unit === 'inch' ? 'millimetre' : 'inch'
  const near = neighbour(here)
  const isEmpty = shown.typed === ''
  const digit = (/** @type {number} */ n) => key(`digit-${n}`, String(n), String(n), () => type(shown.typed + n))
  const turn = () => turnUnit(here.view, instrumentFor(here.view, useOf(here)))
  return html`
    <div class="keys" role="group" aria-label=${keys.pad}>
      ${[7, 8, 9, 4, 5, 6, 1, 2, 3, 0].map(digit)}
      ${key('point', '.', keys.point, () => type(`${shown.typed}.`))}
      ${key('delete', '⌫', keys.delete, () => type(shown.typed.slice(0, -1)))}
      ${key(
        'unit',
        html`<span class="key-small">${keys.unitShort}</span> ${UNIT_MARKS[other]}`,
        keys.unit(text.units[unit], UNIT_MARKS[other]),
        turn,
      )}
      ${key('plus', '+', keys.plus, () => type(signed(shown.typed, '+')))}
      ${key('minus', '−', keys.minus, () => type(signed(shown.typed, '−')))}
      ${near?.lead && isEmpty ? key('lead', `${near.lead}…`, keys.lead(near.lead), () => type(near.lead)) : ''}
      ${near && isEmpty
        ? key(
          'same',
          html`<span class="key-small">${keys.sameShort}</span> ${near.same}`,
          keys.same(near.same),
          () => take(near.same),
        )
        : ''}
      <button type="button" class=${isEmpty ? 'key key-next' : 'key key-next primary'}
        aria-disabled=${isEmpty && !here.step ? 'true' : 'false'}
        @mousedown=${keepFocus} @click=${() => (isEmpty ? skip() : take(shown.typed))}>${isEmpty
          ? keys.skip
          : keys.next}</button>
    </div>`
}

/** @param {string} id @param {unknown} label @param {string} name @param {() => void} press */
const key = (id, label, name, press) =>
  html`<button type="button" class=${`key key-${id}`} aria-label=${name} @mousedown=${keepFocus}
    @click=${press}>${label}</button>`

/** @param {Event} event */
const onInput = (event) => type(/** @type {HTMLInputElement} */ (event.target).value)

/** @param {KeyboardEvent} event */
function onKey(event) {
  if (event.isComposing || event.ctrlKey || event.metaKey || event.altKey) return
  const field = /** @type {HTMLInputElement} */ (event.target)
  const isTab = event.key === 'Tab' && !event.shiftKey && field.value.trim() !== ''
  if (event.key === 'Enter' || isTab) {
    event.preventDefault()
    if (!event.repeat) take(field.value)
    // What the next key meets is empty at once, not only when the page is drawn.
    field.value = shown.typed
    return
  }
  if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
    event.preventDefault()
    move(event.key === 'ArrowDown' ? 1 : -1)
  }
}

/** A micrometer types wherever the keyboard is: its digits belong in the entry, unless another field waits for text.
 * @param {KeyboardEvent} event */
function onStrayKey(event) {
  if (state.route.screen !== 'measure' || event.ctrlKey || event.metaKey || event.altKey) return
  if (!/^[\d.,+\-−]$/.test(event.key) || isText(event.target)) return
  const entry = /** @type {HTMLInputElement | null} */ (document.querySelector('.pad-input'))
  if (!entry) return
  event.preventDefault()
  entry.focus({ preventScroll: true })
  type(shown.typed + event.key)
  entry.value = shown.typed
}

/** @param {EventTarget | null} target */
const isText = (target) => target instanceof Element
  && target.matches('input:not([type=radio]):not([type=checkbox]), textarea, select')

document.addEventListener('keydown', onStrayKey)
