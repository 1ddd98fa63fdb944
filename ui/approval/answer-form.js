// The proposal as the customer sees it: each line with its reason and price, to be answered with yes, no or later, and
// under it who answers and how.
/** @import { Consent, CustomerAnswer, Quote, QuoteLine } from '../types/api.d.ts' */
/** @import { Stroke } from './signature-pad.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { shown } from '../amounts.js'
import { catalogue, choicesOf } from '../catalogue.js'
import { choice, optionsOf } from '../controls/choice.js'
import { formOf } from '../controls/form.js'
import { input } from '../controls/input.js'
import { keyId } from '../controls/price.js'
import { totals } from '../costs/quote.js'
import { submit } from '../edits/queue.js'
import { toTop } from '../frame/room.js'
import { redraw } from '../state.js'
import { words } from '../words.js'
import { signaturePad } from './signature-pad.js'

const text = words.approval

/** @typedef {keyof typeof text.ways} Way */
/** @typedef {{ answers: Record<string, Consent>, name: string, way: Way | undefined, signature: Stroke[] }} Entered */

/** The proposals whose answer is being changed. @type {Set<string>} */
const changing = new Set()

/** @param {string} job @param {string} proposal */
export const isAnswering = (job, proposal) => changing.has(`${job} ${proposal}`)

/** @param {string} job @param {string} proposal @param {boolean} isChanging */
export function changeAnswer(job, proposal, isChanging) {
  if (isChanging) changing.add(`${job} ${proposal}`)
  else changing.delete(`${job} ${proposal}`)
  redraw()
}

/** @param {string} job @param {Quote} quote what was shown @param {string} proposal
 * @param {CustomerAnswer | null} earlier */
export function answerForm(job, quote, proposal, earlier) {
  const form = formOf(`answer ${job} ${proposal}`, () => startFrom(earlier))
  const { entered, refusal, enter } = form
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    const isSaved =
      await form.send((entered) => submit(job, { do: 'answer-proposal', answer: asAnswer(proposal, quote, entered) }))
    if (!isSaved) return
    changeAnswer(job, proposal, false)
    toTop()
  }
  /** @param {QuoteLine[]} lines @param {Consent} answer */
  const answer = (lines, answer) =>
    enter({ answers: { ...entered.answers, ...Object.fromEntries(lines.map(({ of }) => [keyId(of), answer])) } })
  const open = quote.lines.filter(({ of }) => !entered.answers[keyId(of)])
  return html`
    <form class="entry" aria-label=${words.screens.approval} @submit=${save}>
      <p>${text.intro}</p>
      <ul class="quote">
        ${quote.lines.map((line) => question(
          quote,
          line,
          entered.answers[keyId(line.of)],
          (consent) => answer([line], consent),
        ))}
      </ul>
      ${totals(quote)}
      <p role="status" class="answered">
        ${text.answered(open.length, quote.lines.length)} · ${text.yesSum}:
        <strong>${shown(yesSum(quote, entered), quote.currency)}</strong>
      </p>
      ${open.length > 1 ? allAlike(open, answer) : ''}
      <h2>${text.who}</h2>
      ${input({ id: 'answer-name', label: text.name, value: entered.name, enter: (name) => enter({ name }) })}
      ${choice({
        name: 'answer-way',
        legend: text.how,
        options: optionsOf(text.ways),
        value: entered.way,
        choose: (way) => enter({ way }),
      })}
      ${entered.way === 'signed' ? signaturePad(entered.signature, (signature) => enter({ signature })) : ''}
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

/** @param {Quote} quote @param {QuoteLine} line @param {Consent | undefined} value
 * @param {(consent: Consent) => void} choose */
const question = ({ currency }, { of, what, because, net }, value, choose) => html`
  <li class="quote-line">
    <div class="quote-head">
      <p class="asked" aria-hidden="true">${what}</p>
      <p class="amount">${net === null
        ? html`<span class="no-price">${words.costs.noPrice}</span>`
        : html`<strong>${shown(net, currency)}</strong>`}</p>
    </div>
    <p class="why">${because}</p>
    <div class="consent">${choice({
      name: `answer-${keyId(of)}`,
      legend: what,
      options: choicesOf(catalogue().consents),
      value,
      choose,
    })}</div>
  </li>`

/** @param {QuoteLine[]} open @param {(lines: QuoteLine[], answer: Consent) => void} answer */
const allAlike = (open, answer) => html`
  <fieldset class="all-alike">
    <legend>${text.rest}</legend>
    <div class="bar-inline">
      ${choicesOf(catalogue().consents).map(({ value, label }) =>
        html`<button type="button" @click=${() => answer(open, value)}>${label}</button>`)}
    </div>
  </fieldset>`

/** @param {Quote} quote @param {Entered} entered */
const yesSum = ({ lines }, { answers }) =>
  lines.reduce((sum, { of, net }) => (answers[keyId(of)] === 'yes' ? sum + (net ?? 0) : sum), 0)

/** @param {CustomerAnswer | null} earlier @returns {Entered} */
const startFrom = (earlier) => ({
  answers: Object.fromEntries((earlier?.lines ?? []).map(({ of, answer }) => [keyId(of), answer])),
  name: earlier?.name ?? '',
  way: undefined,
  signature: [],
})

/** @param {string} proposal @param {Quote} quote @param {Entered} entered @returns {CustomerAnswer} */
function asAnswer(proposal, { lines }, { answers, name, way, signature }) {
  const given = lines.flatMap(({ of }) => {
    const answer = answers[keyId(of)]
    return answer ? [{ of, answer }] : []
  })
  // That every line has an answer and somebody a name is for the core to judge.
  if (given.length === lines.length && !way) throw new Error(text.howFirst)
  if (way === 'signed' && signature.length === 0) throw new Error(text.signFirst)
  return {
    proposal,
    lines: given,
    name: name.trim(),
    way: way ? text.ways[way].toLowerCase() : '',
    signature: way === 'signed' ? signature : [],
  }
}
