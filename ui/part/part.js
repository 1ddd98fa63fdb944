// One part on the bench: photographed, looked at, tagged, decided. What lies beside the parts is only recorded.
/** @import { JobView, PartView } from '../types/api.d.ts' */
/** @import { Recorded } from './photos.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { kindOf } from '../catalogue.js'
import { lookHere, lookSteps } from '../causes/next-look.js'
import { cautions } from '../controls/cautions.js'
import { field } from '../controls/field.js'
import { decision } from '../decisions/decision.js'
import { append } from '../edits/queue.js'
import { swatch } from '../hatching/key.js'
import { beforeItComesApart } from '../measure/before-apart.js'
import { measured } from '../measure/measured.js'
import { seenInWords } from '../plan/drawing.js'
import { foundInWords } from '../plan/outside.js'
import { toPart, toScreen } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { back } from './back.js'
import { cap } from './cap.js'
import { enlarged } from './enlarged.js'
import { photos } from './photos.js'
import { tags } from './tags.js'

const text = words.part

/** @param {JobView} view */
export function part(view) {
  // In the order in which the hand meets them; the bare block comes last.
  const walk = [...view.assessment.outside, ...view.assessment.parts]
  const here = walk.findIndex((candidate) => candidate.part === state.route.part)
  const open = walk[here]
  if (!open) {
    return {
      title: words.screens.part,
      body: html`<p>${text.missing}</p><a class="button" href=${toScreen(view.job, 'plan')}>${words.screens.plan}</a>`,
    }
  }
  if (open.photos.includes(state.route.photo)) return enlarged(view.job, open, state.route.photo)
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
      ${photos(view.job, open)}
      ${tags(view.job, open)}
      ${judged ? html`${back(view.job, judged)} ${cap(view, judged)} ${measured(view, judged)}` : ''}
      ${field({
        key: `${view.job} ${open.part} note`,
        label: text.note,
        saved: open.note,
        long: true,
        save: (note) => append(view.job, { do: 'remark', part: open.part, text: note }),
      })}
      ${judged ? decision(view.job, judged) : ''}`,
    bar: stepBar(view, open, walk[here - 1], walk[here + 1]),
  }
}

/** What lies beside the parts is not. @param {Recorded} here @returns {here is PartView} */
const isJudged = (here) => 'decision' in here

/** Strip-down order, and the answer that most parts get. The thumb's button is the one that comes next: clean for a
 * part not looked at, on to the next part for any other, so that no stray tap wipes out what was tagged.
 * @param {JobView} view @param {Recorded} open @param {Recorded | undefined} previous @param {Recorded | undefined}
 * next */
const stepBar = (view, open, previous, next) => {
  const { job } = view
  const isClean = open.seen === 'clean'
  const isOpen = open.seen === 'not-looked'
  const clean = () => !isClean && append(job, { do: 'clean', part: open.part })
  const { back, on } = state.route.isLook ? lookSteps(view, open) : {
    back: toCause(view) ?? step(job, previous, text.previous, text.previousPart, false),
    on: step(job, next, text.next, text.nextPart, !isOpen),
  }
  return html`
    <div class="bar step-bar">
      ${back}
      <button type="button" class=${isOpen ? 'primary' : ''} aria-pressed=${isClean ? 'true' : 'false'} @click=${clean}>
        ${open.seen === 'worn' ? text.cleanAfterAll : text.clean}</button>
      ${on}
    </div>`
}

/** The way back to the cause from whose evidence the part was opened. @param {JobView} view */
function toCause({ job, assessment }) {
  const from = assessment.causes.causes.find(({ id }) => id === state.route.cause)
  if (!from) return null
  return html`<a class="button" href=${toScreen(job, 'causes', from.id)}
    aria-label=${words.causes.back(from.name)}>${words.causes.backShort}</a>`
}

/** @param {string} job @param {Recorded | undefined} to @param {string} label @param {(label: string) => string} name
 * @param {boolean} isPrimary */
const step = (job, to, label, name, isPrimary) =>
  to
    ? html`<a class=${isPrimary ? 'button primary' : 'button'} href=${toPart(job, to.part)}
      aria-label=${name(to.label)}>${label}</a>`
    : html`<span class="button" aria-hidden="true"></span>`
