// Where a layout starts from: a usual form, or an engine that the shop has had. One tap; what differs is changed after.
/** @import { Arrangement, JobLine } from '../types/api.d.ts' */
/** @import { Route } from '../route.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { listJobs, openJob } from '../backend.js'
import { catalogue } from '../catalogue.js'
import { attempt } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { derived, startOf } from './defaults.js'
import { layoutName } from './layout-set.js'

const text = words.layout

/** The usual forms, and how many cylinders each has. @type {[Arrangement['layout'], number[]][]} */
const USUAL = [['inline', [1, 2, 3, 4, 5, 6]], ['vee', [6, 8]], ['flat', [4]]]
/** So many engines are shown at once. */
const AT_ONCE = 2

/** All jobs, as they were read last. @type {JobLine[]} */
let lines = []

/** @param {Route} route */
export async function readEarlier({ subject }) {
  if (subject !== 'engine') return
  const { open, finished } = await listJobs({ finished: true, most: 40 })
  lines = [...open.lines, ...finished.lines]
}

/** @param {string} job @param {(start: Arrangement) => void} begin */
export function starts(job, begin) {
  const earlier = differing(lines.filter((line) => line.job !== job))
  return html`
    <fieldset class="choice starts">
      <legend>${text.startUsual}</legend>
      <div class="start-forms">${USUAL.flatMap(([layout, counts]) => counts.map((cylinders) => html`
        <button type="button" @click=${() => begin(usual(layout, cylinders))}>
          ${text.form(layoutName(layout), cylinders)}
        </button>`))}
      </div>
    </fieldset>
    ${earlier.length === 0 ? '' : html`
      <fieldset class="choice starts">
        <legend>${text.startEarlier}</legend>
        <div class="start-engines">${earlier.slice(0, AT_ONCE).map((line) => earlierEngine(line, begin))}</div>
        ${earlier.length <= AT_ONCE ? '' : html`
          <details class="more">
            <summary>${text.moreEarlier(earlier.length - AT_ONCE)}</summary>
            <div class="start-engines">${earlier.slice(AT_ONCE).map((line) => earlierEngine(line, begin))}</div>
          </details>`}
      </fieldset>`}`
}

/** @param {Arrangement['layout']} layout @param {number} cylinders */
const usual = (layout, cylinders) => derived({ ...startOf(catalogue(), layout), cylinders }, 'cylinders', [])

/** The latest of each layout. @param {JobLine[]} jobs */
function differing(jobs) {
  const latestFirst = jobs.filter(({ engine }) => engine !== null).sort((a, b) => b.changed_at - a.changed_at)
  return latestFirst.filter(({ engine }, index) => latestFirst.findIndex((line) => line.engine === engine) === index)
}

/** The line of a job tells its layout in words only: the rest is read when it is wanted.
 * @param {JobLine} line @param {(start: Arrangement) => void} begin */
function earlierEngine({ job, machine, engine }, begin) {
  const take = () =>
    attempt(async () => {
      const { arrangement } = await openJob(job)
      if (arrangement) begin(arrangement)
    })
  return html`
    <button type="button" class="start-earlier" @click=${take}>
      <span class="start-machine">${machine || words.frame.unnamed}</span>
      <span class="folded-set">${capitalised(engine ?? '')}</span>
    </button>`
}
