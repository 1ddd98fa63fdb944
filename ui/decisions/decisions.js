// All decisions: first what can't be said yet and waits for a person, then the severest. Parts with the same outcome by
// the same rule are one line, which leads to its parts, their findings and the source.
/** @import { Extent, JobView, Outcome, PartView } from '../types/api.d.ts' */
/** @import { Judgement } from './judgements.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue, outcomeWords } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { progress } from '../plan/progress.js'
import { toPart, toScreen, toShop } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { judgement } from './judgement.js'
import { isOverruled, judgements, partsInWords } from './judgements.js'

const text = words.decisions

/** Every part is in it. @type {Extent} */
const FULL = 'full'

/** @param {JobView} view */
export function decisions(view) {
  const { parts } = view.assessment
  const title = words.screens.decisions
  if (parts.length === 0) {
    return {
      title,
      body: html`<p>${text.none}</p>
        <p class="bar-inline">
          <a class="button" href=${toScreen(view.job, 'intake', 'engine')}>${words.marks.toIntake}</a>
          ${toRules()}
        </p>`,
    }
  }
  const all = judgements(parts)
  const waiting = all.filter(isWaiting)
  const asked = all.find(({ id }) => id === state.route.subject)
  const open = asked ?? (state.wide ? waiting[0] ?? all[0] : undefined)
  const body = overview(view, all, open)
  const paper = { document: /** @type {const} */ ('report-pdf'), selection: { extent: FULL } }
  if (!open) return { title, body, paper }
  const shown = { ...judgement(view, open), beside: { title, body }, paper }
  // Where nothing was chosen, nothing leads on from it.
  return asked ? shown : { ...shown, bar: '' }
}

const toRules = () => html`<a class="button" href=${toShop('rules')}>${text.allRules}</a>`

/** Somebody looked, and it still can't be said. @param {Judgement} judgement */
const isWaiting = ({ outcome, parts }) => outcome === 'cant-say' && parts.some(({ decision }) => decision.looked_at)

/** @param {JobView} view @param {Judgement[]} all @param {Judgement | undefined} open */
function overview(view, all, open) {
  const waiting = all.filter(isWaiting)
  const others = all.filter((own) => !isWaiting(own))
  const outcomes = /** @type {Outcome[]} */ ([...new Set(others.map(({ outcome }) => outcome))])
  return html`
    ${progress(view.assessment.progress)}
    ${nextLook(view)}
    <section aria-labelledby="decide-now">
      <h2 id="decide-now">${text.now}</h2>
      ${waiting.length === 0 ? html`<p>${text.nothingNow}</p>` : rows(view.job, waiting, open)}
    </section>
    <section aria-labelledby="decided">
      <h2 id="decided">${text.decided}</h2>
      ${outcomes.map((outcome) => group(view.job, outcome, others.filter((own) => own.outcome === outcome), open))}
    </section>
    <p class="hint">${catalogue().governs}</p>
    ${toRules()}`
}

/** What nobody looked at is decided by no finding. @param {JobView} view */
function nextLook({ job, assessment: { parts, progress } }) {
  const next = parts.find(({ seen }) => seen === 'not-looked')
  if (!next || progress.looked >= progress.parts) return ''
  return html`<a class="button next-part" href=${toPart(job, next.part)}>${words.plan.next(next.label)}</a>`
}

/** @param {string} job @param {Outcome} outcome @param {Judgement[]} all @param {Judgement | undefined} open */
function group(job, outcome, all, open) {
  const parts = all.flatMap((own) => own.parts)
  const overruled = parts.filter(isOverruled).length
  return folded({
    name: `${job} decisions ${outcome}`,
    isHere: all.some(({ id }) => id === open?.id),
    summary: html`
      <span class="fold-name">${capitalised(outcomeWords(outcome))}</span>
      <span class="outcome-count">${counted(parts)}</span>
      ${overruled > 0 ? html`<span class="overruled-flag">${text.ofThemOtherwise(overruled)}</span>` : ''}`,
    body: () => rows(job, all, open),
  })
}

/** What was looked at and what was not are told apart: the one follows from findings, the other does not.
 * @param {PartView[]} parts */
function counted(parts) {
  const looked = parts.filter(({ decision }) => decision.looked_at).length
  return text.counted(looked, parts.length - looked)
}

/** @param {string} job @param {Judgement[]} all @param {Judgement | undefined} open */
const rows = (job, all, open) => html`
  <ul class="rows">${all.map((own) => html`
    <li><a class="row" href=${toScreen(job, 'decisions', own.id)}
      aria-current=${own.id === open?.id ? 'true' : 'false'}>
      <span class="row-name">${partsInWords(own.parts)}</span>
      <span class="row-because">${own.because}</span>
    </a></li>`)}</ul>`
