// One judgement: what is done, why, by which source, and the parts of which it holds.
/** @import { JobView, PartView, Reason } from '../types/api.d.ts' */
/** @import { Judgement } from './judgements.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { outcomeWords } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { toPart, toScreen } from '../route.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { reason } from './decision.js'
import { isOverruled, judgements } from './judgements.js'

const text = words.decisions

/** @param {JobView} view @param {Judgement} open */
export function judgement({ job, assessment }, open) {
  const all = judgements(assessment.parts)
  const byRules = open.parts.filter((part) => !isOverruled(part))
  const next = all[all.findIndex(({ id }) => id === open.id) + 1]
  return {
    title: text.title(capitalised(outcomeWords(open.outcome)), open.parts.length),
    body: html`
      <p class="judgement-lead">${open.because}</p>
      <ul class="judgements">
        ${open.parts.filter(isOverruled).map((part) => otherwise(job, part))}
        ${alike(byRules, decidedBy).map((parts) => one(job, open, parts))}
      </ul>
      ${further(job, open, byRules)}
      ${open.source ? folded({
        name: `${job} decision ${open.id} source`,
        summary: text.source,
        body: html`<p class="source">${open.source}</p>`,
      }) : ''}`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toScreen(job, 'decisions')}>${text.all}</a>
        ${next ? html`<a class="button" href=${toScreen(job, 'decisions', next.id)}>${text.next}</a>` : ''}
      </div>`,
  }
}

/** @param {PartView} part */
const decidedBy = ({ decision }) => decision.reasons.slice(0, 1)
/** @param {PartView} part */
const othersOf = ({ decision }) => decision.reasons.slice(1)

/** Parts of which the same is said. @param {PartView[]} parts @param {(part: PartView) => Reason[]} said
 * @returns {PartView[][]} */
function alike(parts, said) {
  /** @type {Map<string, PartView[]>} */
  const groups = new Map()
  for (const part of parts) {
    const key = JSON.stringify(said(part).map(({ because }) => because))
    groups.set(key, [...(groups.get(key) ?? []), part])
  }
  return [...groups.values()]
}

/** @param {string} job @param {Judgement} open @param {PartView[]} parts */
function one(job, open, parts) {
  const because = capitalised(parts[0]?.decision.reasons[0]?.because ?? '')
  const unseen = parts.filter(({ decision }) => !decision.looked_at)
  return html`
    <li class="judgement">
      ${because === open.because ? '' : html`<p>${because}</p>`}
      ${links(job, parts.filter(({ decision }) => decision.looked_at))}
      ${unseen.length === 0 ? '' : html`<span class="not-looked-flag">${text.notLooked}</span> ${links(job, unseen)}`}
    </li>`
}

/** What else the rules say of these parts. @param {string} job @param {Judgement} open @param {PartView[]} parts */
function further(job, open, parts) {
  const more = parts.filter((part) => othersOf(part).length > 0)
  return more.length === 0 ? '' : folded({
    name: `${job} decision ${open.id} further`,
    summary: html`${text.further} <span class="fold-facts">${text.parts(more.length)}</span>`,
    body: () => html`<ul class="judgements">${alike(more, othersOf).map((same) => html`
      <li class="judgement">
        ${links(job, same)}
        <ul class="reasons">${same.slice(0, 1).flatMap(othersOf).map(reason)}</ul>
      </li>`)}</ul>`,
  })
}

/** Both views stand side by side. @param {string} job @param {PartView} part */
function otherwise(job, part) {
  const { outcome, by_rules, overruled_because, reasons } = part.decision
  return html`
    <li class="judgement overruled">
      ${links(job, [part])}
      <p>${text.personSays(outcomeWords(outcome))} ${text.because(overruled_because ?? '')}</p>
      <p>${text.rulesSay(outcomeWords(by_rules))}</p>
      <ul class="reasons">${reasons.map(reason)}</ul>
    </li>`
}

/** @param {string} job @param {PartView[]} parts */
const links = (job, parts) => parts.length === 0 ? '' : html`
  <ul class="part-links">
    ${parts.map((part) => html`<li><a href=${toPart(job, part.part)}>${part.label}</a></li>`)}
  </ul>`
