// Part after part before the camera, in the order of the strip-down, one tap each. The address says from where on;
// which part comes next follows from what has a photo already. So it goes on wherever it was ended.
/** @import { JobView } from '../types/api.d.ts' */
/** @import { Recorded } from '../part/photos.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { kindOf } from '../catalogue.js'
import { cautions } from '../controls/cautions.js'
import { progress } from '../plan/progress.js'
import { toScreen, walkOn } from '../route.js'
import { photoButton, takesPhotos } from '../shots/photo-button.js'
import { shotsOfJob } from '../shots/shots.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { justTaken } from './just-taken.js'
import { hasPhoto, lacking, photographed } from './order.js'

const text = words.camera

/** The address past the last part. */
const END = 'end'

/** @param {JobView} view */
export function camera(view) {
  const { subject } = state.route
  if (!view.plan) {
    return {
      title: words.screens.camera,
      body: html`<p>${text.noEngine}</p><a class="button"
        href=${toScreen(view.job, 'intake', 'engine')}>${words.marks.toIntake}</a>`,
    }
  }
  const [here, then] = subject === END ? [] : lacking(view, subject)
  const all = photographed(view)
  const taken = all.filter((part) => hasPhoto(view.job, part)).length
  return {
    title: here?.label ?? words.screens.camera,
    body: html`
      ${here ? about(here, then) : taken === all.length ? html`<p>${text.done}</p>` : ''}
      ${progress({ looked: taken, parts: all.length }, text.counted)}
      ${shotsOfJob(view.job)}
      ${justTaken(view)}`,
    bar: here ? barOf(view.job, here, then) : barAtEnd(view),
  }
}

/** Large enough to be read while the hands hold the part, and read out once the part before is done.
 * @param {Recorded} here @param {Recorded | undefined} then */
const about = (here, then) => html`
  <p class="camera-then" role="status">
    <span class="unseen">${here.label}.</span> ${then ? text.then(then.label) : text.last}
  </p>
  ${'decision' in here ? '' : html`<p class="hint">${kindOf(here.kind).look}</p>`}
  ${cautions(here.cautions)}`

/** @param {string} job @param {Recorded} here @param {Recorded | undefined} then */
const barOf = (job, here, then) => html`
  <div class="bar camera-bar">
    <a class="button" href=${toScreen(job, 'plan')} @click=${walkOn}>${text.stop}</a>
    <a class="button" href=${toScreen(job, 'camera', then?.part ?? END)} aria-label=${text.skipOf(here.label)}
      @click=${walkOn}>${text.skip}</a>
    ${photoButton({
      job,
      part: here.part,
      label: html`
        <span class="onward-lead">${takesPhotos() ? text.take : text.choose}</span>
        <span class="onward-name">${here.label}</span>`,
      look: 'primary onward-step',
    })}
  </div>`

/** @param {JobView} view */
function barAtEnd(view) {
  const [first] = lacking(view, '')
  return html`
    <div class="bar">
      <a class="button" href=${toScreen(view.job, 'plan')} @click=${walkOn}>${words.screens.plan}</a>
      ${first
        ? html`<a class="button primary" href=${toScreen(view.job, 'camera', first.part)}
          @click=${walkOn}>${text.backTo(first.label)}</a>`
        : ''}
    </div>`
}
