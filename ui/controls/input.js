// A line of a form that is saved as a whole, and the button that brings up all keys where a phone shows digits only.
import { html, nothing } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { isLength } from '../lengths.js'
import { redraw } from '../state.js'
import { words } from '../words.js'
import { moveOn } from './move-on.js'

/**
 * @typedef {object} Input
 * @property {string} id unique on the screen
 * @property {string} label
 * @property {string} value
 * @property {(text: string) => void} enter
 * @property {string} [hint]
 * @property {'text' | 'name' | 'code' | 'length' | 'amount' | 'number' | 'date' | 'telephone'} [kind]
 * @property {'done' | 'next' | 'search'} [enterKey] what the Enter key of a screen keyboard is called; `next` goes on
 * too. Where nothing is said, it is what the system does: on to the next field of the form, and from the last on
 * @property {boolean} [bare] the label is for screen readers only: the column's heading shows it
 */

/** All others are text. @type {{ [kind: string]: string }} */
const TYPES = { date: 'date', telephone: 'tel' }

/** What begins with a capital where a screen keyboard writes it; figures have none.
 * @type {{ [kind: string]: string }} */
const CAPITALS = { text: 'sentences', name: 'words', code: 'characters' }

/** The fields of lengths that the person has left as they stand: only then is it fair to find fault.
 * @type {Set<string>} */
const left = new Set()

/** @param {Input} input */
export function input({ id, label, value, enter, hint, kind = 'text', enterKey, bare }) {
  /** @param {InputEvent} event */
  const onInput = (event) => {
    left.delete(id)
    enter(/** @type {HTMLInputElement} */ (event.target).value)
  }
  /** What fills a field in for the person may tell of it only now. @param {Event} event */
  const onLeave = (event) => {
    left.add(id)
    const { value: typed } = /** @type {HTMLInputElement} */ (event.target)
    if (typed === value) redraw()
    else enter(typed)
  }
  const isWrong = kind === 'length' && left.has(id) && !isLength(value)
  return html`<div class="input">
    <label class="field">
      <span class=${bare ? 'unseen' : 'field-label'}>${label}</span>
      <input type=${TYPES[kind] ?? 'text'} inputmode=${modeOf(kind)} autocomplete="off"
        autocapitalize=${CAPITALS[kind] ?? 'off'} spellcheck=${kind === 'text' ? 'true' : 'false'}
        id=${id} aria-invalid=${isWrong ? 'true' : nothing} aria-describedby=${hint || isWrong ? `${id}-hint` : nothing}
        enterkeyhint=${enterKey ?? nothing} .value=${live(value)} @input=${onInput} @change=${onLeave}
        @keydown=${enterKey === 'next' ? moveOn : nothing}>
    </label>
    <p class=${isWrong ? 'wrong' : 'hint'} id=${`${id}-hint`} ?hidden=${!hint && !isWrong}>${isWrong
      ? words.controls.noLength(value)
      : hint}</p></div>`
}

/** A box of a few lines in a form that is saved as a whole.
 * @param {{ label: string, value: string, enter: (text: string) => void }} box */
export function passage({ label, value, enter }) {
  const onInput = (/** @type {InputEvent} */ event) =>
    enter(/** @type {HTMLTextAreaElement} */ (event.target).value)
  return html`
    <label class="field">
      <span class="field-label">${label}</span>
      <textarea rows="2" autocomplete="off" .value=${live(value)} @input=${onInput}></textarea>
    </label>`
}

let allKeys = false

/** @param {Input['kind']} kind */
function modeOf(kind) {
  if (kind === 'number') return 'numeric'
  if (kind === 'telephone') return 'tel'
  if (kind === 'amount') return 'decimal'
  return kind === 'length' && !allKeys ? 'decimal' : 'text'
}

/** Only a screen without keys of its own needs it. */
const onScreenKeys = matchMedia('(pointer: coarse)')

/** For units and for a manual's second column. */
export function allKeysButton() {
  if (!onScreenKeys.matches) return ''
  const turn = () => {
    allKeys = !allKeys
    redraw()
  }
  return html`<button type="button" class="quiet" aria-pressed=${allKeys ? 'true' : 'false'}
    @click=${turn}>${words.controls.allKeys}</button>`
}

/** A box to tick. @param {{ label: string, checked: boolean, enter: (checked: boolean) => void, hint?: string }} box */
export function tick({ label, checked, enter, hint }) {
  /** @param {Event} event */
  const onChange = (event) => enter(/** @type {HTMLInputElement} */ (event.target).checked)
  return html`
    <label class="tick">
      <input type="checkbox" .checked=${live(checked)} @change=${onChange}>
      <span>${label}${hint ? html` <span class="hint">${hint}</span>` : ''}</span>
    </label>`
}

/** One of many, where boxes would fill the screen.
 * @template {string} Value
 * @param {{ id: string, label: string, value: Value | '', options: readonly { value: Value, label: string }[], choose:
 * (value: Value) => void, blank?: string }} list */
export function pick({ id, label, value, options, choose, blank }) {
  /** @param {Event} event */
  const onChange = (event) => choose(/** @type {Value} */ (/** @type {HTMLSelectElement} */ (event.target).value))
  return html`
    <div class="field">
      <label class="field-label" for=${id}>${label}</label>
      <span class="select"><select id=${id} @change=${onChange}>
        ${blank === undefined
          ? ''
          : html`<option value="" .selected=${live(value === '')} ?disabled=${blank === ''}>${blank}</option>`}
        ${options.map((option) =>
          html`<option value=${option.value} .selected=${live(option.value === value)}>${option.label}</option>`)}
      </select></span>
    </div>`
}
