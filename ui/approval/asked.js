// What a proposal asks: its jobs, each answered as a whole; of one made before there were jobs, each of its lines.
/** @import { Charge, Consent, CustomerAnswer, ProposedJob, Quote, QuoteLine } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { shown } from '../amounts.js'
import { keyId } from '../controls/price.js'
import { words } from '../words.js'

const text = words.approval

/**
 * @typedef {object} Asked
 * @property {string} id unique in its proposal
 * @property {string} what
 * @property {string} because
 * @property {number | null} net
 * @property {number} unpriced lines of it without a price
 * @property {ProposedJob | null} job none where lines are answered one by one
 * @property {Charge | null} line none where it is a job
 * @property {QuoteLine[]} lines what a job holds
 */

/** @param {Quote} quote @returns {Asked[]} */
export const askedIn = (quote) =>
  (quote.jobs?.length
    ? quote.jobs.map((job) => ofJob(quote, job))
    : quote.lines.map((line) => ({
      id: keyId(line.of),
      what: line.what,
      because: line.because,
      net: line.net,
      unpriced: 0,
      job: null,
      line: line.of,
      lines: [],
    })))

/** @param {Quote} quote @param {ProposedJob} job @returns {Asked} */
function ofJob({ lines }, job) {
  const held = new Set(job.lines.map(keyId))
  const own = lines.filter(({ of }) => held.has(keyId(of)))
  return {
    id: job.of,
    what: `${job.number} ${job.title}`,
    because: job.because,
    net: job.without_price === own.length ? null : job.net,
    unpriced: job.without_price,
    job,
    line: null,
    lines: own,
  }
}

/** What was said, by what it was said to. @param {CustomerAnswer | null} answer @returns {Record<string, Consent>} */
export const answersIn = (answer) =>
  Object.fromEntries([
    ...(answer?.jobs ?? []).map(({ of, answer }) => [of, answer]),
    ...(answer?.lines ?? []).map(({ of, answer }) => [keyId(of), answer]),
  ])

/** Its price as far as there is one. @param {Asked} asked @param {string} currency */
export const priceOfAsked = ({ net, unpriced }, currency) =>
  (net === null
    ? words.costs.noPrice
    : unpriced > 0 ? text.atLeast(shown(net, currency)) : shown(net, currency))

/** What a job holds, folded. @param {Asked} asked @param {string} currency */
export const held = ({ lines, what }, currency) =>
  (lines.length === 0 ? '' : html`
    <details class="held-lines">
      <summary aria-label=${text.holdsOf(what, lines.length)}>${text.holdsLines(lines.length)}</summary>
      <ul>${lines.map((line) => html`
        <li class="quote-head"><span>${line.what}</span>
          <span class="amount">${line.net === null ? words.costs.noPrice : shown(line.net, currency)}</span></li>`)}
      </ul>
    </details>`)
