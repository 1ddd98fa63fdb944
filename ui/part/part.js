// One part on the bench: photographed, looked at, tagged, decided. What lies beside the parts is only recorded.
/** @import { JobView, PartView } from '../types/api.d.ts' */
/** @import { Recorded } from './photos.js' */
/** @import { Route } from '../route.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { kindOf } from '../catalogue.js'
import { lookHere, lookSteps, readNextLook } from '../causes/next-look.js'
import { cautions } from '../controls/cautions.js'
import { field } from '../controls/field.js'
import { decision } from '../decisions/decision.js'
import { append } from '../edits/queue.js'
import { swatch } from '../hatching/key.js'
import { seeWhole } from '../markup/photo-frame.js'
import { beforeItComesApart } from '../measure/before-apart.js'
import { measured } from '../measure/measured.js'
import { seenInWords } from '../plan/drawing.js'
import { foundInWords } from '../plan/outside.js'
import { toPart, toScreen, walkOn } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { back } from './back.js'
import { cap } from './cap.js'
import { clean, cleanOn } from './clean.js'
import { enlarged } from './enlarged.js'
import { photos } from './photos.js'
import { hasOpenTag, tags, unfoldAsked } from './tags.js'

const text = words.part

/** @param {JobView} view */
export function part(view) {
  // In the order in which the hand meets them; the bare block comes last.
  const walk = [...view.assessment.outside, ...view.assessment.parts]
  const here = walk.findIndex((candidate) => candidate.part === state.route.part)
  const open = walk[here]
  const next = toCome(walk, here)
  if (!open) {
    return {
      title: words.screens.part,
      body: html`<p>${text.missing}</p><a class="button" href=${toScreen(view.job, 'plan')}>${words.screens.plan}</a>`,
    }
  }
  if (open.photos.includes(state.route.photo)) return enlarged(view.job, walk, open)
  const judged = isJudged(open) ? open : null
  return {
    title: open.label,
    body: html`
      <p class="part-state">
        ${swatch(open.worst, open.seen)} ${judged ? seenInWords(judged) : foundInWords(open)}
      </p>
      ${judged ? '' : html`<p class="hint">${kindOf(open.kind).look}</p>`}
      ${cautions(open.cautions)}
      ${judged ? beforeItComesApart(view, judged) : ''}
      ${lookHere(view, open)}
      ${photos(view, open)}
      ${tags(view.job, open, isCleanInBar(open, next) ? '' : clean(view.job, open, 'tag'))}
      ${judged ? html`${back(view.job, judged)} ${cap(view, judged)} ${measured(view, judged)}` : ''}
      ${field({
        key: `${view.job} ${open.part} note`,
        label: text.note,
        saved: open.note,
        long: true,
        save: (note) => append(view.job, { do: 'remark', part: open.part, text: note }),
      })}
      ${judged ? decision(view.job, judged) : ''}
      ${open.piece
        ? html`<a class="button part-label"
          href=${toScreen(view.job, 'labels', open.part)}>${text.label(open.piece.name)}</a>`
        : ''}`,
    bar: stepBar(view, open, { previous: walk[here - 1], beside: walk[here + 1], next }),
  }
}

/** Where the walk goes on: what was looked at already, among others of its kind perhaps, is passed over. Once all is
 * looked at it goes from part to part. @param {Recorded[]} walk @param {number} here */
const toCome = (walk, here) => walk.slice(here + 1).find(({ seen }) => seen === 'not-looked') ?? walk[here + 1]

/** Everything as it is first met. @param {Route} route */
export function arriveAtPart(route) {
  unfoldAsked(route)
  seeWhole()
}

/** Only on a look is it asked where to look next. @param {string} job */
export const readLook = async (job) => {
  if (state.route.isLook) await readNextLook(job)
}

/** What lies beside the parts is not. @param {Recorded} here @returns {here is PartView} */
const isJudged = (here) => 'decision' in here

/** Where the walk goes from here. The thumb's button is the one that comes next: for a part not looked at, clean and on
 * to the next in one tap; on to the next for any other, and while a tag is open, so that no stray tap wipes out what
 * was tagged.
 * @param {JobView} view @param {Recorded} open
 * @param {{ previous?: Recorded, beside?: Recorded, next?: Recorded }} steps its neighbours, and where the walk goes */
function stepBar(view, open, { previous, beside, next }) {
  const { job } = view
  const isOpen = open.seen === 'not-looked'
  const asksClean = isOpen && !hasOpenTag(job, open)
  if (state.route.isLook) {
    const { back, on } = lookSteps(view, open)
    return html`<div class="bar step-bar">${back} ${clean(job, open, isOpen ? 'primary' : '')} ${on}</div>`
  }
  return html`
    <div class="bar step-bar">
      ${toCause(view) ?? step(job, previous, text.previous, text.previousPart)}
      ${asksClean ? step(job, beside, text.next, text.nextPart) : onward(job, next, isOpen ? '' : 'primary')}
      ${asksClean ? (next ? cleanOn(job, open, next) : clean(job, open, 'primary')) : ''}
    </div>`
}

/** Whether the bar has the answer “clean” for this part by itself. @param {Recorded} open @param {unknown} next */
const isCleanInBar = (open, next) => state.route.isLook || (open.seen === 'not-looked' && !next)

/** The way back to the cause from whose evidence the part was opened. @param {JobView} view */
function toCause({ job, assessment }) {
  const from = assessment.causes.causes.find(({ id }) => id === state.route.cause)
  if (!from) return null
  return html`<a class="button" href=${toScreen(job, 'causes', from.id)}
    aria-label=${words.causes.back(from.name)}>${words.causes.backShort}</a>`
}

/** @param {string} job @param {Recorded | undefined} to @param {string} label
 * @param {(label: string) => string} name */
const step = (job, to, label, name) =>
  to
    ? html`<a class="button" href=${toPart(job, to.part)} aria-label=${name(to.label)} @click=${walkOn}>${label}</a>`
    : ''

/** Large enough to be read from the bench. @param {string} job @param {Recorded | undefined} next
 * @param {string} look how the button looks */
const onward = (job, next, look) =>
  next
    ? html`<a class=${`button onward-step ${look}`} href=${toPart(job, next.part)} @click=${walkOn}>
      <span class="onward-lead">${text.next}:</span> <span class="onward-name">${next.label}</span></a>`
    : ''
