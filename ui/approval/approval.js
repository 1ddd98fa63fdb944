// The customer's yes: a proposal as it is shown, the answer to it, and what has changed since.
/** @import { JobView, Quote, Since } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { shown } from '../amounts.js'
import { today } from '../dates.js'
import { append, settled } from '../edits/queue.js'
import { toTop } from '../frame/room.js'
import { toScreen } from '../route.js'
import { shownJob } from '../state.js'
import { words } from '../words.js'
import { answerForm, isAnswering } from './answer-form.js'
import { answered } from './answered.js'
import { askedIn } from './asked.js'

const text = words.approval

/** @param {JobView} view */
export function approval(view) {
  const { approval, quote } = view.assessment
  return {
    title: approval.version > 0 ? text.version(approval.version) : words.screens.approval,
    body: html`
      ${approval.shown === null || approval.proposal === null
        ? html`<p>${text.none}</p>${offer(view.job, quote, text.make)}`
        : approval.answer && !isAnswering(view.job, approval.proposal)
          ? html`${since(view, text.since)}${answered(view.job, approval.shown, approval.proposal, approval.answer)}`
          : html`${since(view, text.sinceShown)}${answerForm(
            view.job,
            approval.shown,
            approval.proposal,
            approval.answer,
          )}`}`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toScreen(view.job, 'costs')}>${text.toCosts}</a>
        <a class="button" href=${toScreen(view.job, 'hand-over')}>${text.toHandOver}</a>
      </div>`,
  }
}

/** What differs between what was shown and what follows now, with the way to a new version.
 * @param {JobView} view @param {string} heading */
function since(view, heading) {
  const { approval: { since, answer }, quote } = view.assessment
  if (since.length === 0) return answer ? html`<p class="hint">${text.sinceNone}</p>` : ''
  const more = since.filter(({ exceeds }) => exceeds)
  const less = since.filter(({ exceeds }) => !exceeds)
  return html`
    ${more.length > 0 ? changes('since', heading, more) : ''}
    ${less.length > 0 ? changes('since-less', text.sinceLess, less) : ''}
    ${offer(view.job, quote, text.makeNew)}`
}

/** @param {string} id @param {string} heading @param {Since[]} since */
const changes = (id, heading, since) => html`
  <section aria-labelledby=${id}>
    <h2 id=${id}>${heading}</h2>
    <ul class="since">${since.map(({ what, because }) => html`<li><strong>${what}</strong> ${because}</li>`)}</ul>
  </section>`

/** @param {string} job @param {Quote} quote @param {string} verb */
function offer(job, quote, verb) {
  if (quote.lines.length === 0) return html`<p>${text.nothing}</p>`
  if (quote.without_price === quote.lines.length) {
    return html`<p>${text.noPrices}</p><a class="button primary" href=${toScreen(job, 'costs')}>${text.toCosts}</a>`
  }
  return html`
    <p>${text.holds(shown(quote.gross, quote.currency), askedIn(quote).length)}</p>
    ${quote.without_price > 0 ? html`<p class="notice">${text.without(quote.without_price)}</p>` : ''}
    <button type="button" class="primary" @click=${() => propose(job)}>${verb}</button>`
}

/** Proposes exactly what follows from the job now. @param {string} job */
async function propose(job) {
  await settled()
  const quote = shownJob()?.assessment.quote
  if (quote && (await append(job, { do: 'propose', quote, made: today() }))) toTop()
}
