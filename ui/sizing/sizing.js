// The sizes of the rebuild: what is done with each group and why, what to order, which clearances to expect, what came
// back from the machine shop.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { toMeasure, toScreen } from '../route.js'
import { words } from '../words.js'
import { clearances } from './clearances.js'
import { group } from './group.js'
import { orders } from './orders.js'
import { outside } from './outside.js'
import { papers } from './papers.js'
import { readBack } from './read-back.js'
import { tappetBores } from './tappet-bores.js'

const text = words.sizing

/** @param {JobView} view */
export function sizing(view) {
  const title = words.screens.sizing
  const { job, assessment } = view
  if (assessment.parts.length === 0) {
    return {
      title,
      body: html`
        <p>${text.noEngine}</p>
        <a class="button" href=${toScreen(job, 'intake', 'engine')}>${words.marks.toIntake}</a>`,
    }
  }
  const { sizing } = assessment
  return {
    title,
    paper: { document: /** @type {const} */ ('sizes-pdf') },
    body: html`
      ${firstThing(view)}
      ${sizing.groups.map((plan) => group(view, plan))}
      ${tappetBores(view)}
      ${orders(sizing.orders)}
      ${readBack(job, sizing.read_back)}
      ${clearances(job, sizing.clearances)}
      ${outside(view)}
      <section aria-labelledby="sizes-papers">
        <h2 id="sizes-papers">${text.papers}</h2>
        <div class="hand-over-ways">${papers(job)}</div>
      </section>`,
  }
}

/** What to do before anything can follow. @param {JobView} view */
function firstThing({ job, sheet, assessment }) {
  const hasSheet = sheet.lines.length > 0
  const first = assessment.sizing.groups[0]?.parts[0]
  const isMeasured = assessment.parts.some(({ readings }) => readings.length > 0)
  return html`
    ${hasSheet ? '' : html`<p>${text.noSheet}</p><a class="button" href=${toScreen(job, 'sheet')}>${text.toSheet}</a>`}
    ${isMeasured || !first
      ? ''
      : html`<p>${text.noReadings}</p><a class="button"
        href=${toMeasure(job, first.part)}>${text.toPad(first.label)}</a>`}`
}
