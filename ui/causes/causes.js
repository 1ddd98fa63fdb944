// Why it happened: causes in order of likelihood, each a line that leads to its reasons.
/** @import { CauseView, JobView, Unexplained } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { toPart, toScreen } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { answers, chains } from './answers.js'
import { cause } from './cause.js'
import { dimension } from './dimension.js'
import { labelsOf, links } from './evidence.js'
import { lookButton, lookSentence } from './next-look.js'

const text = words.causes

/** Causes less likely than this are folded under one line. */
const WORTH_A_LINE = 0.05

/** Chains drawn on the first screen. */
const CHAINS = 2

/** @param {JobView} view */
export function causes(view) {
  const { summary, answers: told, causes: all, next_look, unexplained } = view.assessment.causes
  // Ordinary wear is said in the summary, once.
  const causes = all.filter(({ ordinary }) => !ordinary)
  const open = causes.findIndex(({ id }) => id === state.route.subject)
  const one = causes[open]
  if (one) return cause(view, one, causes[open - 1], causes[open + 1])
  return {
    title: words.screens.causes,
    body: html`
      <p class="verdict">${summary}</p>
      ${answers(view, told)}
      ${chains(view, causes.slice(0, CHAINS))}
      ${causes.length === 0 ? html`<p>${text.nothing}</p>` : ranked(view.job, causes)}
      ${next_look
        ? html`<section class="next-look"
          aria-labelledby="next-look">${lookSentence(text.nextLook, next_look)}</section>`
        : ''}
      ${unexplained.length === 0 ? '' : misfits(view, unexplained)}`,
    bar: next_look ? html`<div class="bar">${lookButton(view, next_look)}</div>` : '',
  }
}

/** @param {string} job @param {CauseView[]} all likeliest first */
function ranked(job, all) {
  const foremost = all.filter(({ probability }) => probability >= WORTH_A_LINE)
  const rest = all.slice(foremost.length)
  return html`
    ${foremost.length === 0 ? '' : html`<ol class="rows">${foremost.map((cause) => line(job, cause))}</ol>`}
    ${rest.length === 0 ? '' : html`
      <details class="more"><summary>${text.unlikely(rest.length, foremost.length > 0)}</summary>
        <ol class="rows">${rest.map((cause) => line(job, cause))}</ol>
      </details>`}
    <p class="hint">${text.modest}</p>`
}

/** @param {string} job @param {CauseView} cause */
const line = (job, { id, name, probability, likelihood, percent }) => html`
  <li>
    <a class="row" href=${toScreen(job, 'causes', id)}>
      <span class="row-name">${capitalised(name)}</span>
      <span class="likelihood">${dimension(probability)} ${text.likely(capitalised(likelihood), percent)}</span>
    </a>
  </li>`

/** What fits no cause. @param {JobView} view @param {Unexplained[]} all */
const misfits = (view, all) => html`
  <section aria-labelledby="misfits">
    <h2 id="misfits">${text.unexplained}</h2>
    <ul class="evidence">${all.map(({ words, parts }) =>
      html`<li><p>${capitalised(words)}</p>${links(
        (part) => toPart(view.job, part),
        parts,
        labelsOf(view),
      )}</li>`)}</ul>
  </section>`
