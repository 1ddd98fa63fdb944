// An engine as an earlier job left it: its sizes, what was fitted, what was measured after fitting, and why it had
// suffered. What was fitted then is what is found now.
/** @import { JobView, ListItem, SizeGroup } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { folded } from '../controls/folded.js'
import { append } from '../edits/queue.js'
import { toScreen } from '../route.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.earlier
/** A nanometre counts a millionth of a millimetre. */
const NM = 1e6

/** @param {JobView} view the job of today @param {JobView} was */
export const asLeft = (view, was) => html`
  ${sizes(view, was)}
  ${fitted(view, was)}
  ${measured(was)}
  ${why(was)}
  <a class="button" href=${toScreen(was.job, 'hand-over')}>${text.wholeJob}</a>`

/** Each group in the size in which it was left, and the layout. @param {JobView} view @param {JobView} was */
function sizes(view, was) {
  const groups = was.assessment.sizing.groups.filter(({ size }) => size !== null)
  const take = (/** @type {SizeGroup} */ group, /** @type {number} */ size) =>
    append(view.job, { do: 'found-size', group, size: size === 0 ? null : `${size / NM} mm` })
  const { arrangement } = was
  return html`
    <ul class="as-left">
      ${!view.arrangement && arrangement ? html`
        <li>
          <span>${was.assessment.engine}</span>
          <button type="button"
            @click=${() => append(view.job, { do: 'arrange', arrangement })}>${text.takeLayout}</button>
        </li>` : ''}
      ${groups.map(({ group, size, size_shown, finished_shown }) => html`
        <li>
          <span>${text.groups[group]}: ${[size_shown, finished_shown].filter(Boolean).join(', ')}</span>
          ${view.arrangement && (size ?? 0) !== 0
            ? html`<button type="button" @click=${() => take(group, size ?? 0)}>${text.take}</button>`
            : ''}
        </li>`)}
    </ul>`
}

/** What was ordered then, with the numbers under which it is known. @param {JobView} view @param {JobView} was */
function fitted(view, was) {
  const lines = was.assessment.lists.filter(({ kind }) => kind === 'order').flatMap(({ items }) => items)
    .filter(({ tick, steps }) => (tick?.done ?? 0) > 0 || steps.some(({ done }) => done > 0))
    .map(inWords)
  if (lines.length === 0) return ''
  const remarks = view.texts.remarks ?? ''
  const noted = [text.fitted, ...lines].join('\n')
  const note = () =>
    append(view.job, { do: 'fill', field: 'remarks', text: [remarks, noted].filter(Boolean).join('\n') })
  return fold(was, 'fitted', text.fitted, html`
    <ul>${lines.map((line) => html`<li>${line}</li>`)}</ul>
    ${remarks.includes(noted)
      ? html`<p class="hint">${text.inRemarks}</p>`
      : html`<button type="button" @click=${note}>${text.toRemarks}</button>`}`)
}

/** @param {ListItem} item */
const inWords = ({ what, detail, quantity, tick }) =>
  [quantity > 1 ? text.times(quantity, what) : what, detail, tick?.part_number && text.number(tick.part_number)]
    .filter(Boolean)
    .join(', ')

/** Clearances and play as they were when it went together; where they were not measured, as they were worked out.
 * @param {JobView} was */
function measured(was) {
  const { parts, sizing } = was.assessment
  const figures = parts.flatMap(({ label, figures }) =>
    figures.filter(({ phase }) => phase === 'fitted').map(({ name, shown }) => ({ label, name, shown })))
  const rows = figures.length > 0
    ? figures.map(({ label, name, shown }) => `${label}, ${name}: ${shown}`)
    : sizing.clearances.map(({ label, likely_shown }) => `${label}: ${likely_shown}`)
  if (rows.length === 0) return ''
  const title = figures.length > 0 ? text.measured : text.workedOut
  return fold(was, 'measured', title, html`<ul>${rows.map((row) => html`<li>${row}</li>`)}</ul>`)
}

/** Why it had suffered, and what was put right for it. @param {JobView} was */
function why(was) {
  const named = was.assessment.causes.causes.filter(({ named, ordinary }) => named && !ordinary)
  if (named.length === 0) return ''
  const items = was.assessment.lists.filter(({ kind }) => kind === 'put-right').flatMap(({ items }) => items)
  const isDone = (/** @type {ListItem} */ { tick, quantity }) => (tick?.done ?? 0) >= quantity
  return fold(was, 'why', text.causes, html`
    <ul>${named.map(({ name, percent }) => html`<li>${capitalised(name)}, ${percent}</li>`)}</ul>
    ${listed(text.putRight, items.filter(isDone))}
    ${listed(text.notTicked, items.filter((item) => !isDone(item)))}`)
}

/** @param {string} title @param {ListItem[]} items */
const listed = (title, items) =>
  items.length === 0 ? '' : html`<p>${title}</p><ul>${items.map(({ what }) => html`<li>${what}</li>`)}</ul>`

/** @param {JobView} was @param {string} name @param {string} summary @param {unknown} body */
const fold = (was, name, summary, body) => folded({ name: `earlier ${was.job} ${name}`, summary, body })
