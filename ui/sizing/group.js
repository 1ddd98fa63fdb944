// One group that goes to one size: the mains, the crankpins, the bores.
/** @import { GroupPlan, JobView, Missing, PartPlan } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { sizeGroupOf } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { table } from '../controls/table.js'
import { shown } from '../lengths.js'
import { toMeasure, toPart, toScreen } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { asksWord, confirm, isConfirmed } from './confirm.js'
import { marks } from './marks.js'
import { otherSize } from './other-size.js'

const text = words.sizing

/** @param {JobView} view @param {GroupPlan} plan */
export function group(view, plan) {
  const isMeasured = plan.parts.some(({ found_shown }) => found_shown)
  return html`
    <section class="size-group" aria-label=${capitalised(sizeGroupOf(plan.group).label)}>
      ${folded({
        name: `${view.job} sizes ${plan.group}`,
        isOpen: state.wide && (plan.chosen_because !== null || !plan.settled),
        summary: html`
          <span class="fold-name">${capitalised(sizeGroupOf(plan.group).label)}</span>
          <span class=${plan.settled ? 'mark-free' : 'mark-held'}>${plan.settled ? text.settled : text.open}</span>
          ${asksWord(plan) && !isConfirmed(view, plan)
            ? html`<span class="mark-held">${text.notConfirmed}</span>`
            : ''}
          ${faultsOf(plan)}
          <span class="size-lead">${lead(plan)}</span>`,
        body: html`
          ${why(plan)}
          ${isMeasured ? parts(view, plan) : ''}
          ${confirm(view, plan)}
          ${marks(view, plan)}
          ${otherSize(view, plan)}`,
      })}
      ${plan.notices.length === 0
        ? ''
        : html`<ul class="notices">${plan.notices.map((notice) => html`<li>${capitalised(notice)}</li>`)}</ul>`}
      ${missing(view, plan)}
    </section>`
}

/** @param {GroupPlan} plan */
const why = (plan) => html`
  ${plan.because && plan.because !== lead(plan) ? html`<p>${capitalised(plan.because)}</p>` : ''}
  ${mateForAll(plan) ? html`<p>${text.mateForAll(text.mates[plan.group], mateForAll(plan))}</p>` : ''}
  ${plan.chosen_because === null ? '' : html`<p>${text.chosenBecause(plan.chosen_because)}</p>`}`

/** What the fold of the parts must not hide. @param {GroupPlan} plan */
function faultsOf({ parts }) {
  const faulty = parts.filter(({ faults }) => faults.length > 0).length
  return faulty === 0 ? '' : html`<span class="fold-facts">${text.withFaults(faulty)}</span>`
}

/** "Grind all to 0.010 in undersize: finished 2.2390 to 2.2400 in." @param {GroupPlan} plan */
function lead({ action, words: what, finished_shown }) {
  const isMachined = action === 'machine' && finished_shown
  return capitalised(isMachined ? text.finished(what, finished_shown) : `${what}.`)
}

/** The size of shell or piston, if it is the same for all parts. @param {GroupPlan} plan */
function mateForAll({ parts }) {
  const sizes = new Set(parts.map(({ mate_shown }) => mate_shown))
  return sizes.size === 1 ? [...sizes].join('') : ''
}

/** So many missing lines are shown; of more only the first. */
const FOREMOST = 2

/** @param {JobView} view @param {GroupPlan} plan */
function missing(view, plan) {
  if (plan.missing.length === 0) return ''
  const shown = plan.missing.length > FOREMOST ? 1 : FOREMOST
  const rest = plan.missing.slice(shown)
  const list = (/** @type {Missing[]} */ some) =>
    html`<ul class="missing">${some.map((missing) =>
      html`<li><a href=${wayTo(view.job, missing)}>${sentence(missing)}</a></li>`)}</ul>`
  return html`
    <p class="missing-lead">${text.missing}</p>
    ${list(plan.missing.slice(0, shown))}
    ${rest.length === 0 ? '' : html`<details><summary>${text.more(rest.length)}</summary>${list(rest)}</details>`}`
}

/** @param {Missing} missing */
const sentence = ({ label, words }) => (label ? `${label}: ${words}` : words)

/** Where it can be mended: measured, looked at, or entered in the sheet.
 * @param {string} job @param {Missing} missing */
function wayTo(job, { lack, part }) {
  if (part === null) return toScreen(job, 'sheet')
  return lack === 'look' ? toPart(job, part) : toMeasure(job, part)
}

/** @param {JobView} view @param {GroupPlan} plan */
function parts({ job, sheet }, plan) {
  const mate = text.mates[plan.group]
  /** @param {number | null} length */
  const length = (length) => (length === null ? '' : shown(length, sheet.head.unit))
  /** @param {PartPlan} part */
  const row = (part) => ({
    mark: part.part === plan.decided_by ? 'decides' : '',
    head: html`<a href=${toMeasure(job, part.part)}>${part.label}</a>${part.part === plan.decided_by
      ? html` <span class="decides-mark">${text.decides}</span>`
      : ''}`,
    cells: [
      part.found_shown || text.notMeasured,
      // What needs no machining has nothing to clean up at.
      plan.action === 'keep' || (['sleeve', 'renew'].includes(plan.action) && !part.at_fault)
        ? ''
        : length(part.cleans_up_at),
      part.take_off_shown,
      mateForAll(plan) ? '' : part.mate_shown,
      part.faults.length > 0
        ? part.faults.map((fault) => html`<span class="fault">${capitalised(fault)}</span>`)
        : '',
    ],
  })
  return table({
    label: capitalised(sizeGroupOf(plan.group).label),
    heads: [
      text.part,
      text.found,
      text.cleansUp,
      text.comesOff[plan.group === 'bores' ? 'bores' : 'journals'],
      mate,
      text.faults,
    ],
    rows: plan.parts.map(row),
  })
}
