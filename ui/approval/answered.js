// What was shown to the customer and what they answered.
/** @import { Consent, CustomerAnswer, Quote } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { consentWords } from '../catalogue.js'
import { table } from '../controls/table.js'
import { totals } from '../costs/quote.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { changeAnswer } from './answer-form.js'
import { answersIn, askedIn, held, priceOfAsked } from './asked.js'
import { signed } from './said-by.js'

const text = words.approval

/** @param {string} job @param {Quote} quote @param {string} proposal @param {CustomerAnswer} answer */
export function answered(job, quote, proposal, answer) {
  const answers = answersIn(answer)
  const all = askedIn(quote)
  return html`
    <section aria-labelledby="answered">
      <h2 id="answered">${text.saved}</h2>
      ${table({
        label: text.saved,
        heads: Object.values(text.columns),
        rows: all.map((asked) => ({
          head: asked.what,
          cells: [priceOfAsked(asked, quote.currency), said(answers[asked.id])],
        })),
      })}
      ${all.map((asked) => held(asked, quote.currency))}
      ${totals(quote)}
      ${signed(answer)}
      <button type="button" @click=${() => changeAnswer(job, proposal, true)}>${text.again}</button>
    </section>`
}

/** Marked by more than the word: yes in bold, what is put off in outline. @param {Consent | undefined} answer */
const said = (answer) =>
  (answer ? html`<span class=${`said said-${answer}`}>${capitalised(consentWords(answer))}</span>` : '')
