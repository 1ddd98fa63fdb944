// Many parts laid out side by side, looked at one after the other and all clean: recorded at once, each as an entry of
// its own. It lies folded below the plan and asks first, for what nobody looked at must never become clean.
/** @import { JobView, PartView } from '../types/api.d.ts' */
/** @import { Group } from './groups.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { choice, optionsOf } from '../controls/choice.js'
import { folded } from '../controls/folded.js'
import { appendTogether } from '../edits/together.js'
import { redraw } from '../state.js'
import { words } from '../words.js'
import { byKind, byRow } from './groups.js'

const text = words.plan

/** @typedef {keyof typeof text.takenBy} By */

/** @type {By} */
let by = 'kind'
/** The group that is asked about, with its job. */
let asked = ''

/** @param {string} what */
function ask(what) {
  asked = what
  redraw()
}

/** @param {JobView} view */
export function atOnce(view) {
  const kinds = byKind(view)
  if (kinds.length === 0) return ''
  const choose = (/** @type {By} */ chosen) => {
    by = chosen
    ask('')
  }
  return folded({
    name: `${view.job} at once`,
    look: 'at-once',
    summary: text.atOnce,
    body: html`
      ${choice({
        name: 'at-once',
        legend: text.takenTogether,
        options: optionsOf(text.takenBy),
        value: by,
        choose,
      })}
      ${(by === 'kind' ? kinds : byRow(view)).map(({ title, groups }) => html`
        ${title ? html`<h2>${title}</h2>` : ''}
        <ul class=${`at-once-${by}`}>${groups.map((group) => offered(view.job, group))}</ul>`)}`,
  })
}

/** @param {string} job @param {Group} group */
function offered(job, { id, name, what, parts }) {
  const isAsked = asked === `${job} ${id}`
  const press = () => {
    ask(isAsked ? '' : `${job} ${id}`)
    // What is asked stands below the button, perhaps out of sight.
    requestAnimationFrame(() => document.querySelector('.at-once-asked')?.scrollIntoView({ block: 'nearest' }))
  }
  return html`
    <li>
      <button type="button" aria-label=${text.unseen(what)} aria-expanded=${isAsked ? 'true' : 'false'}
        @click=${press}>${name}</button>
    </li>
    ${isAsked ? html`<li class="at-once-asked">${confirm(job, what, parts)}</li>` : ''}`
}

/** @param {string} job @param {string} what @param {PartView[]} parts */
function confirm(job, what, parts) {
  const record = () => {
    ask('')
    const changes = parts.map(({ part }) => ({ do: /** @type {const} */ ('clean'), part }))
    return appendTogether(job, what, text.allClean(what), changes)
  }
  return html`
    <div role="group" aria-label=${what}>
      <p><strong>${text.eachLooked}</strong></p>
      <p>${parts.map(({ label }) => label).join('; ')}</p>
      <div class="bar-inline">
        <button type="button" @click=${() => ask('')}>${text.notAll}</button>
        <button type="button" @click=${record}>${text.recordAll(parts.length)}</button>
      </div>
    </div>`
}
