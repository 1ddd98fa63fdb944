// The three steps of taking in. Each has an address of its own, so that Back and a reload come to the same one.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { toScreen } from '../route.js'
import { words } from '../words.js'
import { isLayoutWaiting } from './layout-form.js'

const text = words.intake

/** @typedef {keyof typeof text.steps} Step */

const STEPS = /** @type {Step[]} */ (Object.keys(text.steps))

/** The step that an address names; the first, if it names none. @param {string} subject */
export const stepOf = (subject) => STEPS.find((step) => step === subject) ?? 'customer'

/** @param {Step} step */
export const titleOf = (step) => text.step(STEPS.indexOf(step) + 1, STEPS.length)

/** @param {string} job @param {Step} step */
export const toStep = (job, step) => toScreen(job, 'intake', step === 'customer' ? '' : step)

/** @param {JobView} view @param {Step} here */
export const stepLinks = (view, here) => html`
  <nav class="intake-steps" aria-label=${text.stepsOf}>
    <ol>${STEPS.map((step, index) => html`
      <li><a href=${toStep(view.job, step)} aria-current=${step === here ? 'step' : 'false'}>
        <span>${index + 1} ${text.steps[step]}</span>
        ${step === 'engine' && isLayoutWaiting(view) ? html`<span class="intake-waiting">${text.notSaved}</span>` : ''}
      </a></li>`)}
    </ol>
  </nav>`
