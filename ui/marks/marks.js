// The marks of caps and rods, asked for one after the other before they come off.
/** @import { JobView, MarkView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { screenCautions } from '../controls/cautions.js'
import { beforeTheCapsComeOff } from '../measure/before-apart.js'
import { toScreen, walkOn } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { inWords } from './in-words.js'
import { lastNoted, markBar, markForm } from './mark-form.js'
import { placeId } from './place.js'

const text = words.marks

/** @param {JobView} view */
export function marks(view) {
  const { places, missing, warnings } = view.assessment.marks
  const title = words.screens.marks
  if (places.length === 0) {
    return {
      title,
      body: html`
        <p>${text.noEngine}</p>
        <a class="button" href=${toScreen(view.job, 'intake', 'engine')}>${text.toIntake}</a>`,
    }
  }
  const asked = places.find(({ place }) => placeId(place) === state.route.subject) ?? places.find(({ mark }) => !mark)
  const apart = beforeTheCapsComeOff(view, missing === 0)
  return {
    title,
    body: html`
      <p>${missing === places.length ? text.intro : ''} ${missing > 0 ? text.missing(missing) : text.done}</p>
      <div role="status">${warnings.length === 0 ? '' : html`
        <section class="warnings" aria-labelledby="marks-warnings">
          <h2 id="marks-warnings">${text.warnings}</h2>
          <ul>${warnings.map((warning) => html`<li>${warning}</li>`)}</ul>
        </section>`}</div>
      ${lastNoted()}
      ${apart.isOpen ? apart.fold : ''}
      ${asked ? markForm(view, asked) : ''}
      ${apart.isOpen ? '' : apart.fold}
      ${missing > 0 ? screenCautions('marks') : ''}
      <section aria-labelledby="marks-list">
        <h2 id="marks-list">${text.list}</h2>
        <ul class="mark-list">${places.map((place) => line(view.job, place, place === asked))}</ul>
      </section>`,
    bar: asked ? markBar(view, asked) : undefined,
  }
}

/** @param {string} job @param {MarkView} view @param {boolean} current */
const line = (job, { place, label, mark }, current) => html`
  <li>
    <a href=${toScreen(job, 'marks', placeId(place))} @click=${walkOn} aria-current=${current ? 'step' : 'false'}>
      <span>${label}</span>
      <span class=${mark ? 'mark-read' : 'mark-missing'}>${mark ? inWords(mark) : text.none}</span>
    </a>
  </li>`
