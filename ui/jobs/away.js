// Jobs that are put away, each with the way back.
/** @import { AwayLine } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { bringBackJob, listAway } from '../backend.js'
import { day, dayOf } from '../dates.js'
import { go, toScreen } from '../route.js'
import { attempt } from '../state.js'
import { words } from '../words.js'

const text = words.jobs

/** As they were read last. @type {AwayLine[]} */
let lines = []

export async function readAway() {
  lines = await listAway()
}

export const isAnyAway = () => lines.length > 0

export const away = () => lines.length === 0 ? '' : html`
  <details>
    <summary>${text.away(lines.length)}</summary>
    <ul class="job-list away">${repeat(lines, ({ job }) => job, line)}</ul>
  </details>`

/** @param {AwayLine} of */
function line({ job, customer, machine, until }) {
  const name = [customer, machine].filter(Boolean).join(' · ') || words.frame.unnamed
  return html`
    <li>
      <div><strong>${name}</strong> <span>${text.awayUntil(day(dayOf(until)))}</span></div>
      <button type="button" aria-label=${text.bringBackOf(name)}
        @click=${() => bringBack(job)}>${text.bringBack}</button>
    </li>`
}

/** @param {string} job */
const bringBack = (job) =>
  attempt(async () => {
    await bringBackJob(job)
    go(toScreen(job, 'plan'))
  })
