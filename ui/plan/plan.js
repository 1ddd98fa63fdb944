// The engine as a plan: every part in its place, hatched by what was seen.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { key } from '../hatching/key.js'
import { toPart, toScreen, toShop } from '../route.js'
import { words } from '../words.js'
import { atOnce } from './at-once.js'
import { drawing } from './drawing.js'
import { outside } from './outside.js'
import { progress } from './progress.js'

const text = words.plan

/** @param {JobView} view */
export function plan(view) {
  const title = words.screens.plan
  if (!view.plan) {
    return {
      title,
      body: html`<p>${text.noEngine}</p><a class="button"
        href=${toScreen(view.job, 'intake', 'engine')}>${words.marks.toIntake}</a>`,
    }
  }
  const next = nextOf(view)
  return {
    title,
    body: html`
      <p class="engine-line">${view.assessment.engine}</p>
      ${view.assessment.notices.map((notice) => html`<p class="notice">${notice}</p>`)}
      ${progress(view.assessment.progress)}
      ${outside(view)}
      ${drawing(view)}
      ${atOnce(view)}
      ${key()}`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toShop('label')}>${words.screens.label}</a>
        ${next ? html`<a class="button primary" href=${toPart(view.job, next.part)}>${text.next}</a>` : ''}
      </div>`,
  }
}

/** What is looked at next. Once a part has been, what comes before the opening is asked for no longer: the engine is
 * open. @param {JobView} view */
function nextOf({ assessment: { outside, parts, progress } }) {
  const inOrder = progress.looked === 0 ? [...outside, ...parts] : parts
  return inOrder.find(({ seen }) => seen === 'not-looked')
}
