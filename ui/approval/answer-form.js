// The proposal as the customer sees it: each job with its reason, its price and what happens if it is left, to be
// answered with yes, no or later, and under it who answers and how.
/** @import { Consent, CustomerAnswer, Quote } from '../types/api.d.ts' */
/** @import { Asked } from './asked.js' */
/** @import { Saying } from './said-by.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { shown } from '../amounts.js'
import { catalogue, choicesOf, needWords } from '../catalogue.js'
import { choice } from '../controls/choice.js'
import { formOf, hasDraft } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { totals } from '../costs/quote.js'
import { submit } from '../edits/queue.js'
import { toTop } from '../frame/room.js'
import { redraw } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { answersIn, askedIn, held, priceOfAsked } from './asked.js'
import { asSaid, sayingFields, startSaying, unsigned } from './said-by.js'

const text = words.approval

/** @typedef {Saying & { answers: Record<string, Consent> }} Entered */

/** The proposals whose answer is being changed. @type {Set<string>} */
const changing = new Set()

/** @param {string} job @param {string} proposal */
export const isAnswering = (job, proposal) =>
  changing.has(`${job} ${proposal}`) || hasDraft(answerName(job, proposal))

/** @param {string} job @param {string} proposal */
const answerName = (job, proposal) => `answer ${job} ${proposal}`

/** @param {string} job @param {string} proposal @param {boolean} isChanging */
export function changeAnswer(job, proposal, isChanging) {
  if (isChanging) changing.add(`${job} ${proposal}`)
  else changing.delete(`${job} ${proposal}`)
  redraw()
}

/** @param {string} job @param {Quote} quote what was shown @param {string} proposal
 * @param {CustomerAnswer | null} earlier */
export function answerForm(job, quote, proposal, earlier) {
  const form = formOf(answerName(job, proposal), () => startFrom(earlier), unsigned)
  const { entered, refusal, enter } = form
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    const isSaved =
      await form.send((entered) => submit(job, { do: 'answer-proposal', answer: asAnswer(proposal, quote, entered) }))
    if (!isSaved) return
    changeAnswer(job, proposal, false)
    toTop()
  }
  /** @param {Asked[]} asked @param {Consent} answer */
  const answer = (asked, answer) =>
    enter({ answers: { ...entered.answers, ...Object.fromEntries(asked.map(({ id }) => [id, answer])) } })
  const all = askedIn(quote)
  const open = all.filter(({ id }) => !entered.answers[id])
  return html`
    <form class="entry" aria-label=${words.screens.approval} @submit=${save}>
      <p>${text.intro}</p>
      ${foundDraft(form)}
      <ul class="quote">
        ${all.map((asked) =>
          question(quote, asked, entered.answers[asked.id], (consent) => answer([asked], consent)))}
      </ul>
      ${totals(quote)}
      <p role="status" class="answered">
        ${text.answered(open.length, all.length)} · ${text.yesSum}:
        <strong>${shown(yesSum(quote, entered), quote.currency)}</strong>
      </p>
      ${open.length > 1 ? allAlike(open, answer) : ''}
      ${sayingFields(entered, enter)}
      <p role="alert" class="refusal">${refusal}</p>
      <div class="bar-inline">
        ${earlier
          ? html`<button type="button"
            @click=${() => { form.forget(); changeAnswer(job, proposal, false) }}>${text.keepAnswer}</button>`
          : ''}
        <button class="primary">${text.save}</button>
      </div>
    </form>`
}

/** @param {Quote} quote @param {Asked} asked @param {Consent | undefined} value
 * @param {(consent: Consent) => void} choose */
const question = ({ currency }, asked, value, choose) => html`
  <li class="quote-line">
    <div class="quote-head">
      <p class="asked" aria-hidden="true">${asked.what}</p>
      <p class="amount">${asked.net === null
        ? html`<span class="no-price">${words.costs.noPrice}</span>`
        : html`<strong>${priceOfAsked(asked, currency)}</strong>`}</p>
    </div>
    <p class="why">${asked.job
      ? html`<strong>${text.need(capitalised(needWords(asked.job.need)))}</strong> `
      : ''}${asked.because}</p>
    ${asked.job ? html`<p class="if-left">${text.ifLeft(asked.job.if_left)}</p>` : ''}
    ${held(asked, currency)}
    <div class="consent">${choice({
      name: `answer-${asked.id}`,
      legend: asked.what,
      options: choicesOf(catalogue().consents),
      value,
      choose,
    })}</div>
  </li>`

/** @param {Asked[]} open @param {(asked: Asked[], answer: Consent) => void} answer */
const allAlike = (open, answer) => html`
  <fieldset class="all-alike">
    <legend>${text.rest}</legend>
    <div class="bar-inline">
      ${choicesOf(catalogue().consents).map(({ value, label }) =>
        html`<button type="button" @click=${() => answer(open, value)}>${label}</button>`)}
    </div>
  </fieldset>`

/** @param {Quote} quote @param {Entered} entered */
const yesSum = (quote, { answers }) =>
  askedIn(quote).reduce((sum, { id, net }) => (answers[id] === 'yes' ? sum + (net ?? 0) : sum), 0)

/** @param {CustomerAnswer | null} earlier @returns {Entered} */
const startFrom = (earlier) => ({ answers: answersIn(earlier), ...startSaying(earlier) })

/** @param {string} proposal @param {Quote} quote @param {Entered} entered @returns {CustomerAnswer} */
function asAnswer(proposal, quote, { answers, ...saying }) {
  const all = askedIn(quote)
  const given = all.flatMap(({ id, job, line }) => {
    const answer = answers[id]
    return answer ? [{ job, line, answer }] : []
  })
  // That everything has an answer and somebody a name is for the core to judge.
  if (given.length === all.length && !saying.way) throw new Error(text.howFirst)
  return {
    proposal,
    lines: given.flatMap(({ line, answer }) => (line ? [{ of: line, answer }] : [])),
    jobs: given.flatMap(({ job, answer }) => (job ? [{ of: job.of, answer }] : [])),
    ...asSaid(saying),
  }
}
