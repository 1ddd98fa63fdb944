// How the manual grades its standard shells: by the mark of the housing and that of the journal.
/** @import { JobView, Journals, ShellGrade } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { allKeysButton, input } from '../controls/input.js'
import { table } from '../controls/table.js'
import { append, submit } from '../edits/queue.js'
import { toScreen } from '../route.js'
import { words } from '../words.js'

const text = words.sheet

/** @type {Journals[]} */
const JOURNALS = ['mains', 'crankpins']

/** The screen of such journals. @param {Journals} journals */
const subjectOf = (journals) => `grades-${journals}`

/** The journals of whose shells a screen tells. @param {string} subject */
export const gradedOf = (subject) => JOURNALS.find((journals) => subjectOf(journals) === subject)

/** @param {JobView} view @param {Journals} journals */
const rowsOf = ({ sheet }, journals) => (sheet.grades ?? []).filter((row) => row.journals === journals)

/** A row as the sheet has it. @param {JobView} view @param {ShellGrade} row */
export const gradeOf = (view, { journals, housing, journal }) =>
  rowsOf(view, journals).find((row) => row.housing === housing && row.journal === journal)

/** Lines of the sheet that lead to the tables. @param {JobView} view */
export const toGrades = (view) => JOURNALS.map((journals) => html`
  <li>
    <a class="row" href=${toScreen(view.job, 'sheet', subjectOf(journals))}>
      <span class="row-name">${text.grades[journals]}</span>
      <span class="row-facts">${text.gradeRows(rowsOf(view, journals).length)}</span>
    </a>
  </li>`)

/** @returns {{ before: ShellGrade | null, housing: string, journal: string, grade: string, source: string }} */
const blank = () => ({ before: null, housing: '', journal: '', grade: '', source: '' })

/** @param {JobView} view @param {Journals} journals */
export function gradesSheet(view, journals) {
  const { job } = view
  const rows = rowsOf(view, journals)
  const form = formOf(`grades ${job} ${journals}`, () => ({ ...blank(), source: rows.at(-1)?.source ?? '' }))
  const { entered, refusal, enter, send, forget } = form
  const first = () => queueMicrotask(() => document.getElementById('grade-housing')?.focus())
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    if (await send(({ before, ...typed }) => submit(
      job,
      ...(before && isMoved(before, typed) ? [asDropped(before)] : []),
      { do: 'state-grade', grade: { journals, ...typed } },
    ))) first()
  }
  const drop = async (/** @type {ShellGrade} */ row) => {
    if (!(await append(job, asDropped(row)))) return
    forget()
    first()
  }
  /** @param {'housing' | 'journal' | 'grade' | 'source'} key @param {string} label */
  const field = (key, label) =>
    input({ id: `grade-${key}`, label, value: entered[key], enter: (typed) => enter({ [key]: typed }) })
  return {
    title: text.grades[journals],
    body: html`
      <p class="hint">${text.gradesHint[journals]}</p>
      ${rows.length === 0 ? '' : table({
        label: text.grades[journals],
        heads: [text.markOn[journals], text.markOnShaft, text.grade, text.page],
        rows: rows.map((row) => ({
          head: html`<button type="button" aria-label=${text.changeGrade(row.housing, row.journal)}
            @click=${() => {
              enter({ ...row, before: row })
              first()
            }}>${row.housing}</button>`,
          cells: [row.journal, row.grade, row.source],
        })),
      })}
      <form class="entry" id="grades" @submit=${save}>
        <h2>${entered.before ? text.changeGrade(entered.before.housing, entered.before.journal) : text.newGrade}</h2>
        ${foundDraft(form)}
        <div class="series-fields">
          ${field('housing', text.markOn[journals])}${field('journal', text.markOnShaft)}${field('grade', text.grade)}
        </div>
        ${field('source', text.page)}
        <p role="alert" class="refusal">${refusal}</p>
        <div class="bar-inline">
          ${entered.before ? html`
            <button type="button" @click=${forget}>${text.leaveRow}</button>
            <button type="button"
              @click=${() => entered.before && drop(entered.before)}>${text.dropGrade}</button>` : ''}
          <button class="primary">${text.saveGrade}</button>
        </div>
        ${allKeysButton()}
      </form>`,
    bar: html`<div class="bar"><a class="button" href=${toScreen(job, 'sheet')}>${text.toSheet}</a></div>`,
  }
}

/** @param {ShellGrade} before @param {{ housing: string, journal: string }} typed */
const isMoved = (before, { housing, journal }) =>
  before.housing.trim().toLowerCase() !== housing.trim().toLowerCase()
  || before.journal.trim().toLowerCase() !== journal.trim().toLowerCase()

/** @param {ShellGrade} row */
const asDropped = ({ journals, housing, journal }) =>
  ({ do: /** @type {const} */ ('drop-grade'), journals, housing, journal })
