// Why it happened: causes in order of likelihood, each a line that leads to its reasons.
/** @import { CauseView, Extent, JobView, Unexplained } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { folded } from '../controls/folded.js'
import { toPart, toScreen } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { answers, chains } from './answers.js'
import { cause } from './cause.js'
import { dimension } from './dimension.js'
import { labelsOf, links } from './evidence.js'
import { lookButton, lookSentence, nextLook } from './next-look.js'

const text = words.causes

/** Causes less likely than this are folded under one line. */
const WORTH_A_LINE = 0.05
/** And no more than so many stand in the open. */
const FOREMOST = 6

/** Chains drawn on the first screen. */
const CHAINS = 2

/** @type {Extent} */
const SHORT = 'short'

/** @param {JobView} view */
export function causes(view) {
  const { summary, answers: told, causes: all, unexplained } = view.assessment.causes
  const look = nextLook(view)
  // Ordinary wear is said in the summary, once.
  const causes = all.filter(({ ordinary }) => !ordinary)
  const asked = causes.findIndex(({ id }) => id === state.route.subject)
  const open = asked < 0 && state.wide && causes.some(({ named }) => named) ? 0 : asked
  const one = causes[open]
  const beside = {
    title: words.screens.causes,
    body: html`
      <p class="verdict">${summary}</p>
      ${answers(view, told)}
      ${state.wide ? '' : chains(view, causes.slice(0, CHAINS))}
      ${look === null
        ? ''
        : html`<section class="next-look"
          aria-labelledby="next-look">${lookSentence(text.nextLook, look)}</section>`}
      ${causes.length === 0 ? html`<p>${text.nothing}</p>` : ranked(view.job, causes, one)}
      ${unexplained.length === 0 ? '' : misfits(view, unexplained)}`,
  }
  const paper = { document: /** @type {const} */ ('report-pdf'), selection: { extent: SHORT } }
  const bar = look ? html`<div class="bar">${lookButton(view, look)}</div>` : ''
  if (!one) return { ...beside, paper, bar }
  return {
    ...cause(view, one, causes[open - 1], causes[open + 1]),
    beside,
    paper,
    ...(asked < 0 && look && { bar }),
  }
}

/** @param {string} job @param {CauseView[]} all likeliest first @param {CauseView | undefined} open */
function ranked(job, all, open) {
  const foremost = all.filter(({ probability }, nth) => nth < FOREMOST && probability >= WORTH_A_LINE)
  const rest = all.slice(foremost.length)
  return html`
    ${foremost.length === 0
      ? ''
      : html`<ol class="rows">${foremost.map((cause) => line(job, cause, cause === open))}</ol>`}
    ${rest.length === 0 ? '' : html`
      ${folded({
        name: `${job} causes unlikely`,
        isHere: open !== undefined && rest.includes(open),
        summary: rest.some(({ probability }) => probability >= WORTH_A_LINE)
          ? text.lessLikely(rest.length)
          : text.unlikely(rest.length, foremost.length > 0),
        body: html`<ol class="rows">${rest.map((cause) => line(job, cause, cause === open))}</ol>`,
      })}`}
    <p class="hint">${text.modest}</p>`
}

/** @param {string} job @param {CauseView} cause @param {boolean} isOpen */
const line = (job, { id, name, probability, likelihood, percent }, isOpen) => html`
  <li>
    <a class="row" href=${toScreen(job, 'causes', id)} aria-current=${isOpen ? 'true' : 'false'}>
      <span class="row-name">${capitalised(name)}</span>
      <span class="likelihood">${dimension(probability)} ${text.likely(capitalised(likelihood), percent)}</span>
    </a>
  </li>`

/** What fits no cause. @param {JobView} view @param {Unexplained[]} all */
const misfits = (view, all) => folded({
  name: `${view.job} causes misfits`,
  summary: html`${text.unexplained} <span class="fold-facts">${text.findings(all.length)}</span>`,
  body: html`<ul class="evidence">${all.map(({ words, parts }) =>
    html`<li><p>${capitalised(words)}</p>${links(
      (part) => toPart(view.job, part),
      parts,
      labelsOf(view),
    )}</li>`)}</ul>`,
})
