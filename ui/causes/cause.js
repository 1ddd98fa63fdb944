// One cause: how likely it is, what speaks for and against it, on the plan and in words, and what to do about it.
/** @import { CauseView, JobView, PlaceView, Todo } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { folded } from '../controls/folded.js'
import { toScreen, toWitness } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { chain } from './answers.js'
import { dimension } from './dimension.js'
import { evidencePlan } from './evidence-plan.js'
import { evidence, labelsOf } from './evidence.js'
import { letters } from './letters.js'

const text = words.causes

/** @param {JobView} view @param {CauseView} cause @param {CauseView | undefined} previous
 * @param {CauseView | undefined} next */
export function cause(view, cause, previous, next) {
  const labels = labelsOf(view)
  const address = (/** @type {string} */ part) => toWitness(view.job, part, cause.id)
  return {
    title: capitalised(cause.name),
    body: html`
      <p class="likelihood">${dimension(cause.probability)} <strong>${text.likely(
        capitalised(cause.likelihood),
        cause.percent,
      )}</strong></p>
      <p>${cause.plainly}</p>
      ${places(cause)}
      ${cause.told ? chain(view, cause) : ''}
      <div class="cause-columns">
        <div>${evidencePlan(view, cause, address)}</div>
        <div>
          ${part(text.for, cause.evidence_for, (all) => html`
            ${evidence(address, all, labels)}
            <p class="source">${text.source}: ${cause.source}</p>`)}
          ${part(text.against, cause.evidence_against, (all) => evidence(address, all, labels))}
          ${part(text.check, cause.check, lines)}
          ${part(text.putRight, [...closing(view, cause), ...cause.put_right], lines)}
        </div>
      </div>`,
    bar: html`
      <div class="bar cause-bar">
        ${step(view.job, previous, text.previous, text.previousCause)}
        <a class="button" href=${toScreen(view.job, 'causes')}>${text.all}</a>
        ${step(view.job, next, text.next, text.nextCause)}
      </div>`,
  }
}

/** @param {string} job @param {CauseView | undefined} to @param {string} label @param {(name: string) => string}
 * name */
const step = (job, to, label, name) =>
  to
    ? html`<a class="button" href=${toScreen(job, 'causes', to.id)} aria-label=${name(to.name)}>${label}</a>`
    : html`<span class="button" aria-hidden="true"></span>`

/** What is put right about the ways by which it came in and which were found. @param {JobView} view
 * @param {CauseView} cause @returns {Todo[]} */
const closing = (view, { ways_in }) => view.assessment.causes.to_close
  .filter(({ id }) => ways_in.some((way) => way.id === id))
  .map(({ id, todo, found }) => ({ id, words: `${todo} ${found.join('. ')}.`, moot: '' }))

/** Where a cause of one place may be. @param {CauseView} cause */
function places(cause) {
  if (cause.places.length === 0) return ''
  const letter = letters(cause)
  return html`
    <h2>${text.where}</h2>
    <ul class="cause-places">${cause.places.map((place) => html`
      <li>${letter.has(place)
        ? html`<span class="place-flag">${letter.get(place)}</span>`
        : ''} ${placed(place)}</li>`)}
    </ul>`
}

/** As surely as it can be said. @param {PlaceView} place */
const placed = ({ label, probability }) => `${capitalised(label)}: ${text.about(Math.round(probability * 10) * 10)}`

/** What was folded or unfolded of one cause is so of the next.
 * @template {{ words: string }} Of @param {string} heading @param {Of[]} all
 * @param {(all: Of[]) => unknown} body */
const part = (heading, all, body) => all.length === 0 ? '' : folded({
  name: `cause ${heading}`,
  look: 'cause-part',
  summary: html`
    <span class="folded-line">
      <span class="fold-name">${heading}: ${all.length}</span>
      <span class="folded-set">${capitalised(all[0]?.words ?? '')}</span>
    </span>`,
  isOpen: state.wide,
  body: body(all),
})

/** @param {Todo[]} all */
const lines = (all) => html`<ul>${all.map((todo) => html`<li>${said(todo)}</li>`)}</ul>`

/** With why it is not needed, where it is not. @param {Todo} todo */
const said = ({ words: asked, moot }) => moot ? text.notNeeded(asked, moot) : asked
