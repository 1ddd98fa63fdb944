// The shop's instruments: what there is, how far each can be trusted, when it was last checked.
/** @import { Instrument } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { instrumentKindOf } from '../catalogue.js'
import { day } from '../dates.js'
import { toInstruments } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { instrumentForm } from './instrument-form.js'

const text = words.instruments

export function instruments() {
  const { instruments: all } = state.shelf
  const { subject } = state.route
  const chosen = all.find(({ id }) => id === subject)
  if (chosen || subject === 'new') return instrumentForm(chosen)
  return {
    title: words.screens.instruments,
    body: html`
      <p>${text.intro}</p>
      ${all.length === 0
        ? html`<p>${text.none}</p>`
        : html`<ul class="rows">${all.map(line)}</ul>`}`,
    bar: html`
      <div class="bar">
        ${state.cameFrom ? html`<a class="button" href=${state.cameFrom}>${text.back}</a>` : ''}
        <a class="button primary" href=${toInstruments('new')}>${text.add}</a>
      </div>`,
  }
}

/** @param {Instrument} instrument */
const line = ({ id, name, kind, uncertainty, checked }) => html`
  <li>
    <a class="row" href=${toInstruments(id)}>
      <span class="row-name">${name}</span>
      <span>${capitalised(instrumentKindOf(kind).name)}</span>
      <span>± ${uncertainty}</span>
      <span>${checked ? text.checkedOn(day(checked)) : text.unchecked}</span>
    </a>
  </li>`
