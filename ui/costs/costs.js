// What the rebuild costs: the total first, then a line for each thing that it is made of or compared with. Each leads
// to its own: a job of the proposal line by line, prices, ways, another engine, the first estimate.
/** @import { Difference, JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { askedIn, priceOfAsked } from '../approval/asked.js'
import { hasCurrency, shown } from '../amounts.js'
import { termsInWords } from '../controls/terms.js'
import { toScreen } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { differences } from './differences.js'
import { estimate } from './estimate.js'
import { excess } from './excess.js'
import { hasNewer, jobPrices, takePrices } from './job-prices.js'
import { otherEngines } from './other-engines.js'
import { jobLines, totals } from './quote.js'
import { ways } from './ways.js'

const text = words.costs

/**
 * @typedef {object} Section one thing on the screen of costs, and a screen of its own
 * @property {string} id as it stands in the address
 * @property {string} title
 * @property {string} [amount]
 * @property {string} [facts]
 * @property {string} [flag] what waits for a person in it
 * @property {() => unknown} body
 */

/** @param {JobView} view */
export function costs(view) {
  const { job, assessment } = view
  const title = words.screens.costs
  if (assessment.parts.length === 0) {
    return {
      title,
      body: html`
        <p>${text.noEngine}</p>
        <a class="button" href=${toScreen(job, 'intake', 'engine')}>${words.marks.toIntake}</a>`,
    }
  }
  const all = sections(view)
  const asked = all.find(({ id }) => id === state.route.subject)
  const open = asked ?? (state.wide ? all[0] : undefined)
  const body = overview(view, all, open)
  const toProposal = html`<a class="button primary" href=${toScreen(job, 'approval')}>${text.toApproval}</a>`
  const paper = { document: /** @type {const} */ ('customers-pdf') }
  if (!open) return { title, body, paper, bar: html`<div class="bar">${toProposal}</div>` }
  const next = all[all.indexOf(open) + 1]
  return {
    title: open.title,
    body: open.body(),
    beside: { title, body },
    paper,
    bar: html`
      <div class="bar">
        ${state.wide ? toProposal : ''}
        ${asked ? html`<a class="button" href=${toScreen(job, 'costs')}>${text.all}</a>` : ''}
        ${asked && next
          ? html`<a class="button" href=${toScreen(job, 'costs', next.id)} aria-label=${text.next(next.title)}>
            ${text.nextShort}</a>`
          : ''}
      </div>`,
  }
}

/** @param {JobView} view @param {Section[]} all @param {Section | undefined} open */
const overview = (view, all, open) => html`
  ${excess(view.assessment)}
  ${view.assessment.quote.lines.length === 0 ? html`<p>${text.nothing}</p>` : totals(view.assessment.quote)}
  ${hasCurrency(view.prices) ? view.assessment.left_out.map((words) => html`<p class="hint">${words}</p>`) : ''}
  ${hasCurrency(view.prices) ? '' : html`<p>${text.none}</p>${takePrices(view)}`}
  <ul class="rows">${all.map((own) => html`
    <li>
      <a class="row cost-row" href=${toScreen(view.job, 'costs', own.id)}
        aria-current=${own.id === open?.id ? 'true' : 'false'}>
        <span class="cost-name">${own.title}</span>
        ${own.amount ? html`<span class="amount">${own.amount}</span>` : ''}
        ${own.flag ? html`<span class="no-price">${own.flag}</span>` : ''}
        ${own.facts ? html`<span class="cost-facts">${own.facts}</span>` : ''}
      </a>
    </li>`)}</ul>`

/** Jobs first, then what they are compared with, then at which prices. @param {JobView} view @returns {Section[]} */
function sections(view) {
  const { prices, assessment, estimate: told } = view
  const { currency } = prices
  const isPriced = hasCurrency(prices)
  const money = (/** @type {number} */ amount) => shown(amount, currency)
  return [
    ...askedIn(assessment.quote).map((asked) => ({
      id: asked.id,
      title: asked.what,
      amount: asked.net === null ? '' : priceOfAsked(asked, currency),
      flag: asked.unpriced > 0 ? text.unpricedLines(asked.unpriced, asked.lines.length) : '',
      body: () => jobLines(view, asked),
    })),
    ...assessment.ways.map((own) => ({
      id: `way-${own.kind}`,
      title: own.what,
      facts: [text.ways, own.ways.find(({ work }) => work === own.followed)?.words ?? ''].filter(Boolean).join(': '),
      body: () => ways(view, own),
    })),
    ...(isPriced ? [
      {
        id: 'other-engines',
        title: text.otherEngines,
        facts: assessment.other_engines.verdict,
        flag: assessment.other_engines.ask ? text.toCompare : '',
        body: () => otherEngines(view),
      },
      {
        id: 'estimate',
        title: text.estimate,
        amount: told.length > 0 ? money(told.reduce((sum, { net }) => sum + net, 0)) : '',
        facts: told.length > 0 ? '' : text.notEntered,
        body: () => estimate(view),
      },
    ] : []),
    ...(told.length > 0 ? [{
      id: 'differences',
      title: text.differences,
      amount: changed(assessment.differences, money),
      body: () => differences(view.job, assessment.differences, currency),
    }] : []),
    {
      id: 'prices',
      title: text.prices,
      facts: isPriced ? termsInWords(prices) : '',
      flag: hasNewer(prices) ? text.newerFlag : '',
      body: () => jobPrices(view),
    },
  ]
}

/** @param {Difference[]} all @param {(amount: number) => string} money */
function changed(all, money) {
  const more = all.reduce((sum, own) => sum + own.more, 0)
  return `${more > 0 ? '+' : ''}${money(more)}`
}
