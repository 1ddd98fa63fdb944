// Everything that was done, latest first, each undoable.
/** @import { HistoryLine, JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { getHistory } from '../backend.js'
import { moment } from '../dates.js'
import { append } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.history

/** As it was read last. @type {HistoryLine[] | null} */
let lines = null

export const forgetHistory = () => {
  lines = null
}

/** @param {string} job */
export async function readHistory(job) {
  lines = await getHistory(job)
}

/** @param {JobView} view */
export const history = (view) => ({
  title: words.screens.history,
  body: html`
    <p>${text.intro}</p>
    ${listed(view.job)}`,
})

/** @param {string} job */
function listed(job) {
  if (lines === null) return html`<p>${words.frame.loading}</p>`
  if (lines.length === 0) return html`<p>${text.none}</p>`
  return html`<ol class="history">${repeat(lines, ({ edit }) => edit, (line) => entry(job, line))}</ol>`
}

/** @param {string} job @param {HistoryLine} line */
function entry(job, line) {
  /** @param {string} name @param {string} edit */
  const button = (name, edit) => html`
    <button type="button" aria-label=${text.button(name, line.sentence)}
      @click=${() => append(job, { do: 'undo', edit })}>${name}</button>`
  return html`
    <li class=${line.undone ? 'history-undone' : ''}>
      <time datetime=${new Date(line.at).toISOString()}>${moment(line.at)}</time>
      <span class="history-sentence">${line.sentence}${line.undone ? html` <em>(${text.undone})</em>` : ''}</span>
      ${line.undoable ? button(text.undo, line.edit) : line.again ? button(text.again, line.again) : ''}
    </li>`
}
