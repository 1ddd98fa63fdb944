// The job is put away, and gone after 30 days: only once an archive of it was saved.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { putAwayJob, Refusal } from '../backend.js'
import { settled } from '../edits/queue.js'
import { saveWholeJob } from '../papers.js'
import { go, toShop } from '../route.js'
import { attempt, redraw, state } from '../state.js'
import { words } from '../words.js'

const text = words.handOver

/** The job of which an archive must be saved first. */
let unsaved = ''

/** Asked once: what it does stands above the button. @param {JobView} view */
export const putAway = ({ job }) => html`
  <details>
    <summary>${text.putAway}</summary>
    <p role="status">${unsaved === job ? text.archiveFirst : text.putAwayHint}</p>
    ${unsaved === job
      ? html`<button type="button" @click=${() => saveFirst(job)}>${text.saveAndPutAway}</button>`
      : html`<button type="button" @click=${() => away(job)}>${text.putAwayNow}</button>`}
  </details>`

/** @param {string} job */
const away = (job) =>
  attempt(async () => {
    await settled()
    try {
      await putAwayJob(job)
    } catch (failure) {
      if (!(failure instanceof Refusal) || failure.code !== 'not-archived') throw failure
      unsaved = job
      redraw()
      return
    }
    unsaved = ''
    state.onArrival = { notice: text.isPutAway }
    go(toShop('jobs'))
  })

/** Where the archive was not saved after all, nothing is put away; where it lacks photos, only when asked again.
 * @param {string} job */
async function saveFirst(job) {
  const { isSaved, isWhole } = await saveWholeJob(job)
  if (isSaved) unsaved = ''
  if (isWhole) await away(job)
  else redraw()
}
