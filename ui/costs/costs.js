// What the rebuild costs: at which prices, line by line with its reason, and beside the first estimate.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { hasCurrency } from '../amounts.js'
import { toScreen } from '../route.js'
import { words } from '../words.js'
import { differences } from './differences.js'
import { estimate } from './estimate.js'
import { excess } from './excess.js'
import { jobPrices } from './job-prices.js'
import { otherEngines } from './other-engines.js'
import { quote } from './quote.js'
import { ways } from './ways.js'

const text = words.costs

/** @param {JobView} view */
export function costs(view) {
  const { job, prices, assessment } = view
  const title = words.screens.costs
  if (assessment.parts.length === 0) {
    return {
      title,
      body: html`
        <p>${text.noEngine}</p>
        <a class="button" href=${toScreen(job, 'intake', 'engine')}>${words.marks.toIntake}</a>`,
    }
  }
  return {
    title,
    body: html`
      ${excess(assessment)}
      ${jobPrices(view)}
      ${quote(view)}
      ${ways(view)}
      ${hasCurrency(prices) ? otherEngines(view) : ''}
      ${hasCurrency(prices) ? estimate(view) : ''}
      ${view.estimate.length > 0 ? differences(assessment.differences, prices.currency) : ''}`,
    bar: html`<div class="bar"><a class="button primary"
      href=${toScreen(job, 'approval')}>${text.toApproval}</a></div>`,
  }
}
