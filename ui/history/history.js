// Everything that was done, day by day, latest first, each undoable; looked through by what it is about.
/** @import { HistoryLine, JobView, NoEffect, Topic } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { getHistory } from '../backend.js'
import { optionsOf } from '../controls/choice.js'
import { folded } from '../controls/folded.js'
import { pick } from '../controls/input.js'
import { clock, day, dayOf } from '../dates.js'
import { append } from '../edits/queue.js'
import { redraw } from '../state.js'
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

/** What is looked for. @type {{ job: string, topic: Topic | '', part: string }} */
let sought = { job: '', topic: '', part: '' }

/** @param {JobView} view */
export function history(view) {
  if (sought.job !== view.job) sought = { job: view.job, topic: '', part: '' }
  return { title: words.screens.history, body: html`<p>${text.intro}</p>${listed(view)}` }
}

/** @param {JobView} view */
function listed(view) {
  if (lines === null) return html`<p>${words.frame.loading}</p>`
  if (lines.length === 0) return html`<p>${text.none}</p>`
  const { topic, part } = sought
  const found = lines.filter((line) => (!topic || line.topic === topic) && (!part || line.part === part))
  return html`
    ${filters(view, lines)}
    ${found.length === 0 ? html`<p>${text.noneSuch}</p>` : ''}
    ${repeat(days(found), ([first]) => first && dayOf(first.at), (same, nth) => oneDay(view.job, same, nth === 0))}`
}

/** @param {JobView} view @param {HistoryLine[]} all */
function filters({ assessment }, all) {
  const seek = (/** @type {Partial<typeof sought>} */ change) => {
    sought = { ...sought, ...change }
    redraw()
  }
  const topics = optionsOf(text.topics).filter(({ value }) => all.some(({ topic }) => topic === value))
  const parts = [...assessment.outside, ...assessment.parts]
    .filter((own) => all.some(({ part }) => part === own.part))
    .map(({ part, label }) => ({ value: part, label }))
  const told = [...topics, ...parts].filter(({ value }) => value === sought.topic || value === sought.part)
  return folded({
    name: 'history filter',
    summary: text.filter(told.map(({ label }) => label)),
    body: html`
    <div class="pair">
      ${pick({
        id: 'history-topic',
        label: text.about,
        value: sought.topic,
        blank: text.everything,
        options: topics,
        choose: (topic) => seek({ topic }),
      })}
      ${pick({
        id: 'history-part',
        label: text.part,
        value: sought.part,
        blank: text.everyPart,
        options: parts,
        choose: (part) => seek({ part }),
      })}
    </div>`,
  })
}

/** In days, as they come. @param {HistoryLine[]} all @returns {HistoryLine[][]} */
function days(all) {
  /** @type {Map<string, HistoryLine[]>} */
  const days = new Map()
  for (const line of all) {
    const day = dayOf(line.at)
    const same = days.get(day)
    if (same) same.push(line)
    else days.set(day, [line])
  }
  return [...days.values()]
}

/** Entries of the latest day shown before its others are folded away. */
const FOREMOST = 6

/** @param {string} job @param {HistoryLine[]} same of one day @param {boolean} isLatest */
function oneDay(job, same, isLatest) {
  const [first] = same
  const date = first ? dayOf(first.at) : ''
  const undone = same.filter((line) => line.undone).length
  const earlier = same.slice(FOREMOST)
  return folded({
    name: `${job} history ${date}`,
    isOpen: isLatest,
    summary: html`
      <span class="fold-name">${day(date)}</span>
      <span class="fold-facts">${[
        text.entries(same.length),
        undone > 0 ? text.ofThemUndone(undone) : '',
      ].filter(Boolean).join(', ')}</span>`,
    body: () => html`
      ${list(job, same.slice(0, FOREMOST))}
      ${earlier.length === 0 ? '' : folded({
        name: `${job} history ${date} earlier`,
        isOpen: !isLatest,
        summary: text.earlier(earlier.length),
        body: () => list(job, earlier),
      })}`,
  })
}

/** @param {string} job @param {HistoryLine[]} some */
const list = (job, some) =>
  html`<ol class="history">${repeat(some, ({ edit }) => edit, (line) => entry(job, line))}</ol>`

/** @param {string} job @param {HistoryLine} line */
function entry(job, line) {
  /** @param {string} name @param {string} edit */
  const button = (name, edit) => html`
    <button type="button" aria-label=${text.button(name, line.sentence)}
      @click=${() => append(job, { do: 'undo', edit })}>${name}</button>`
  return html`
    <li class=${line.undone ? 'history-undone' : ''}>
      <time datetime=${new Date(line.at).toISOString()}>${clock(line.at)}</time>
      <span class="history-sentence">${line.sentence}${line.undone ? html` <em>(${text.undone})</em>` : ''}
        ${line.of_a_copy ? html`<em>(${text.ofACopy})</em>` : ''}
        ${line.no_effect ? html`<em>(${whyNot(line.no_effect)})</em>` : ''}</span>
      ${line.undoable ? button(text.undo, line.edit) : line.again ? button(text.again, line.again) : ''}
    </li>`
}

/** @param {NoEffect} none */
const whyNot = (none) => none.why === 'unfit' ? text.unfit(none.reason) : text.noEffect[none.why]
