// The spec sheet of the job: what the engine's own manual says. Each thing on it has a form of its own.
/** @import { GeneralRule, JobView, Line, LineWords, PartKind } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue, kindOf, quantityOf } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { toScreen } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { doubts } from './doubts.js'
import { finishSheet, toFinish } from './finish.js'
import { gradedOf, gradesSheet, toGrades } from './grades.js'
import { headForm } from './head-form.js'
import { lineForm } from './line-form.js'
import { lineId, lineOf, newLine } from './line-key.js'
import { groupOf, GROUPS, isAsked, seriesSheet, seriesTable } from './series.js'
import { shelf } from './shelf.js'

const text = words.sheet

/** @param {JobView} view */
export function sheet(view) {
  const { subject } = state.route
  if (subject === 'head') return headForm(view)
  if (subject === 'shelf') return shelf(view)
  if (subject === 'finish') return finishSheet(view)
  const graded = gradedOf(subject)
  if (graded) return gradesSheet(view, graded)
  const group = groupOf(subject)
  if (group) return seriesSheet(view, group)
  const line = lineOf(view, subject)
  if (line || subject.split('.')[0] === 'new') return lineForm(view, line)
  return overview(view)
}

/** @param {JobView} view */
function overview(view) {
  const { job, general_rules, assessment } = view
  return {
    title: words.screens.sheet,
    body: html`
      ${head(view)}
      ${doubts(assessment.sheet_doubts)}
      ${byKind(view).map(([kind, lines]) => linesOf(view, kind, lines))}
      ${GROUPS.filter((group) => isAsked(view, group)).map((group) => seriesTable(view, group))}
      <section aria-labelledby="sheet-besides">
        <h2 id="sheet-besides">${text.besides}</h2>
        <ul class="rows">${toGrades(view)}${toFinish(view)}</ul>
      </section>
      ${general(job, general_rules)}`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toScreen(job, 'sheet', 'shelf')}>${text.shelf}</a>
        ${isBlank(view)
          ? html`<a class="button primary" href=${toScreen(job, 'sheet', 'head')}>${text.enterHead}</a>`
          : ''}
        <a class=${isBlank(view) ? 'button' : 'button primary'}
          href=${toScreen(job, 'sheet', newLine())}>${text.addLine}</a>
      </div>`,
  }
}

/** @param {JobView} view */
function head(view) {
  const { job, sheet } = view
  const { name, source, unit, clean_up, guard_percent = 100, general_rules = true, otherwise = [] } = sheet.head
  const facts = [
    text.units[unit],
    clean_up ? text.cleaningUp(clean_up) : text.noCleaningUp,
    guard_percent === 100 ? text.fullGuard : text.guard(guard_percent),
    general_rules ? text.rulesOn : text.rulesOff,
    ...(otherwise.length > 0 ? [text.otherViews(otherwise.length)] : []),
  ]
  return html`
    ${isBlank(view) ? html`<p>${text.none}</p>` : ''}
    <ul class="rows">
      <li>
        <a class="row" href=${toScreen(job, 'sheet', 'head')}>
          <span class="row-name">${name || text.unnamed}</span>
          ${source ? html`<span>${source}</span>` : ''}
          <span class="row-facts">${facts.join('; ')}</span>
        </a>
      </li>
    </ul>`
}

/** @param {JobView} view */
const isBlank = ({ sheet }) => !sheet.head.name && !sheet.head.source && sheet.lines.length === 0

/** @typedef {[Line, LineWords | undefined]} Worded a line with its words */

/** The lines by the kinds of which they speak, as these come out of the engine.
 * @param {JobView} view @returns {[PartKind, Worded[]][]} */
function byKind({ sheet, sheet_words, assessment }) {
  /** @type {Map<PartKind, Worded[]>} */
  const lines = new Map()
  const kinds = [...assessment.parts.map(({ kind }) => kind), ...catalogue().kinds.map(({ id }) => id)]
  for (const kind of kinds) lines.set(kind, [])
  sheet.lines.forEach((line, nth) => lines.get(line.of.kind)?.push([line, sheet_words.lines[nth]]))
  return [...lines].filter(([, own]) => own.length > 0)
}

/** @param {JobView} view @param {PartKind} kind @param {Worded[]} lines */
const linesOf = ({ job }, kind, lines) => folded({
  name: `${job} sheet ${kind}`,
  summary: html`
    <span class="fold-name">${capitalised(kindOf(kind).name)}</span>
    <span class="fold-facts">${text.lines(lines.length)}</span>`,
  body: () => html`<ul class="rows">${lines.map(([line, inWords]) => row(job, line, inWords))}</ul>`,
})

/** @param {string} job @param {Line} line @param {LineWords | undefined} inWords */
const row = (job, line, inWords) => inWords && html`
  <li>
    <a class="row limit-row" href=${toScreen(job, 'sheet', encodeURIComponent(lineId(line.of)))}>
      <span class="row-name">${capitalised(inWords.aspect)}</span>
      <span>${inWords.new ? html`<span class="row-head">${text.fresh}</span> ${inWords.new}` : ''}</span>
      <span>${inWords.worn ? html`<span class="row-head">${text.worn}</span> ${inWords.worn}` : ''}</span>
      <span class="row-facts">${line.source}</span>
    </a>
  </li>`

/** @param {string} job @param {GeneralRule[]} rules */
const general = (job, rules) => rules.length === 0 ? '' : folded({
  name: `${job} sheet general`,
  summary: html`
    <span class="fold-name">${text.general}</span> <span class="fold-facts">${text.lines(rules.length)}</span>`,
  body: html`
    <p class="hint">${text.generalHint}</p>
    <ul class="rows">${rules.map((rule) => html`
      <li class="row limit-row">
        <span class="row-name">
          ${capitalised(kindOf(rule.kind).name)}, ${quantityOf(rule.kind, rule.quantity).words}
        </span>
        <span>${rule.limits}</span>
        <span></span>
        <span class="row-facts">${rule.source}</span>
      </li>`)}</ul>`,
})
