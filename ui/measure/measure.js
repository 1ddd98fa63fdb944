// The measuring pad: a walk over the places of the parts, one number after the other.
/** @import { JobView, PartView } from '../types/api.d.ts' */
/** @import { Bench } from './pad.js' */
/** @import { Step } from './walk.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { foundDraft } from '../controls/found-draft.js'
import { folded } from '../controls/folded.js'
import { toMeasure, toPart, toScreen, walkOn } from '../route.js'
import { redraw } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { isGone } from './before-apart.js'
import { figures, figuresInWords } from './figures.js'
import { formDrawing } from './form-drawing.js'
import { entryAndKeys } from './keys.js'
import { limits } from './limits.js'
import { benchOf, foundHalf, goTo } from './pad.js'
import { placeDrawing } from './place-drawing.js'
import { places, readings } from './places.js'
import { questions } from './questions.js'
import { highSpot, setUp } from './set-up.js'
import { missing } from './walk.js'

const text = words.measure

/** Places and pad have room side by side. */
const room = matchMedia('(min-width: 56.25rem) and (min-height: 40rem)')
room.addEventListener('change', redraw)

/** @param {JobView} view */
export function measure(view) {
  const here = benchOf(view)
  if (!here) {
    return {
      title: words.screens.measure,
      body: html`<p>${text.missing}</p><a class="button" href=${toScreen(view.job, 'plan')}>${words.screens.plan}</a>`,
    }
  }
  const { part, quantity, phase } = here
  const figuresHere = part.figures.filter((figure) => figure.phase === phase)
  // A question comes below the places, so that none moves from under the finger.
  const bench = html`
    ${setUp(here)}
    ${phase === 'found' && isGone(view, part.part, quantity) ? html`<p class="notice">${text.goneHere}</p>` : ''}
    ${places(here)}
    ${foundDraft(foundHalf())}
    ${questions(here)}
    ${highSpot(here)}
    ${limits(here)}
    ${here.step ? placeDrawing(here.step, view) : done(here)}`
  const rest = html`
    ${neighbours(here)}
    ${readings(here, room.matches)}
    ${folded({
      name: `${view.job} figures`,
      isOpen: room.matches,
      summary: html`
        <span class="folded-line">
          <span class="fold-name">${text.figures}</span>
          <span class="folded-set">${figuresHere.length > 0 ? figuresInWords(figuresHere) : text.noFigures}</span>
        </span>`,
      body: html`
        ${formDrawing(part, quantity, phase)}
        ${figures(figuresHere)}`,
    })}
    <p class="part-links">
      <a href=${toPart(view.job, part.part)}>${text.toPart}</a>
      <a href=${toScreen(view.job, 'sizing')}>${text.toSizes}</a>
    </p>`
  // Where there is room, the pad stands beside the places; else in reach of the thumb.
  if (!room.matches) return { title: part.label, body: html`${bench}${rest}`, bar: entryAndKeys(here) }
  return {
    title: part.label,
    body: html`
      <div class="bench">
        <div class="bench-places">${bench}${rest}</div>
        <div class="bench-pad">${entryAndKeys(here)}</div>
      </div>`,
  }
}

/** What the walk has left out. @param {Bench} here */
function done(here) {
  const open = missing(here.steps, here.phase, here.part.part)
  return html`
    <section class="walk-done">
      <p><strong>${text.done}</strong> ${open.length === 0 ? text.nothingMissing : ''}</p>
      ${open.length === 0 ? '' : html`
        <h3>${text.stillMissing}</h3>
        <ul class="still-missing">${open.map(({ part, steps }) => html`
          <li><button type="button"
            @click=${() => steps[0] && goTo(steps[0])}>${part.label}: ${leftOut(steps)}</button></li>`)}</ul>`}
    </section>`
}

/** @param {Step[]} steps */
const leftOut = (steps) =>
  (steps.length > 3 ? text.openPlaces(steps.length) : steps.map(({ label, words: what }) => label || what).join('; '))

/** The parts before and after this one in the walk. @param {Bench} here */
function neighbours({ view, steps, part, quantity, phase }) {
  /** @type {PartView[]} */
  const parts = []
  for (const step of steps) if (parts.at(-1)?.part !== step.part.part) parts.push(step.part)
  const at = parts.findIndex((one) => one.part === part.part)
  const link = (/** @type {PartView | undefined} */ to, /** @type {(label: string) => string} */ name) =>
    to
      ? html`<a class="button quiet" @click=${walkOn}
        href=${toMeasure(view.job, to.part, quantity, phase)}>${capitalised(name(to.label))}</a>`
      : ''
  if (parts.length < 2) return ''
  return html`
    <div class="bar-inline neighbours">
      ${link(parts[at - 1], text.previousPart)}${link(parts[at + 1], text.nextPart)}
    </div>`
}
