// Many parts of one kind, looked at one after the other and all clean: recorded at once, each as an entry of its own
// that can be undone alone. It lies folded below the plan and asks first, for what nobody looked at must never become
// clean.
/** @import { JobView, PartKind, PartView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { kindOf } from '../catalogue.js'
import { append } from '../edits/queue.js'
import { tell } from '../edits/told.js'
import { toScreen } from '../route.js'
import { redraw } from '../state.js'
import { words } from '../words.js'

const text = words.plan

/** The kind that is asked about, with its job: `job kind`. */
let asked = ''

/** @param {string} what */
function ask(what) {
  asked = what
  redraw()
}

/** @param {JobView} view */
export function atOnce(view) {
  const groups = unseen(view)
  if (groups.length === 0) return ''
  return html`
    <details class="at-once">
      <summary>${text.atOnce}</summary>
      <ul>${groups.map((parts) => html`<li>${group(view.job, parts)}</li>`)}</ul>
    </details>`
}

/** Kinds of which several parts were not looked at, in strip-down order. @param {JobView} view */
function unseen({ assessment }) {
  /** @type {Map<PartKind, PartView[]>} */
  const groups = new Map()
  for (const part of assessment.parts) {
    if (part.seen === 'not-looked') groups.set(part.kind, [...(groups.get(part.kind) ?? []), part])
  }
  return [...groups.values()].filter((parts) => parts.length > 1)
}

/** @param {string} job @param {PartView[]} parts */
function group(job, parts) {
  const kind = parts[0]?.kind
  if (!kind) return ''
  const what = text.ofKind(parts.length, kindOf(kind).name)
  const isAsked = asked === `${job} ${kind}`
  const press = () => ask(isAsked ? '' : `${job} ${kind}`)
  return html`
    <button type="button" class="wide" aria-expanded=${isAsked ? 'true' : 'false'} @click=${press}>
      ${text.unseen(what)}</button>
    ${isAsked ? confirm(job, parts, what) : ''}`
}

/** @param {string} job @param {PartView[]} parts @param {string} what */
function confirm(job, parts, what) {
  const record = async () => {
    ask('')
    const at = location.hash
    const isSaved = await append(job, ...parts.map(({ part }) => ({ do: /** @type {const} */ ('clean'), part })))
    if (isSaved) tell({ at, sentence: text.allClean(what), place: toScreen(job, 'history') })
  }
  return html`
    <div class="at-once-asked" role="group" aria-label=${what}>
      <p><strong>${text.eachLooked}</strong></p>
      <p>${parts.map(({ label }) => label).join('; ')}</p>
      <div class="bar-inline">
        <button type="button" @click=${() => ask('')}>${text.notAll}</button>
        <button type="button" @click=${record}>${text.recordAll(parts.length)}</button>
      </div>
    </div>`
}
