// The engine as a plan: every part in its place, hatched by what was seen.
/** @import { JobView, PlanSection } from '../types/api.d.ts' */
/** @import { Drawn } from './drawing.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { lacking } from '../camera/order.js'
import { foldsTurned } from '../controls/folded.js'
import { key } from '../hatching/key.js'
import { toPart, toScreen, toShop } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { atOnce } from './at-once.js'
import { isNarrow, openFirst } from './open-first.js'
import { outsideSection } from './outside.js'
import { progress } from './progress.js'
import { sections } from './sections.js'

const text = words.plan

/** So many rows, each as high as a thumb, lie open on a phone. */
const ROWS = 20

/** The titles of the sections that lie open, as they were when the person came here: what was just done folds none from
 * under their finger. @type {Set<string> | null} */
let open = null

export const arriveAtPlan = () => {
  open = null
}

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
  const { engine, notices, progress: looked, parts } = view.assessment
  const next = nextOf(view)
  return {
    title,
    body: html`
      <p class="engine-line">${engine}</p>
      ${notices.map((notice) => html`<p class="notice">${notice}</p>`)}
      ${progress(looked)}
      ${key(parts)}
      ${drawn(view, view.plan.sections, next?.part)}
      ${atOnce(view)}`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toShop('label')}>${words.screens.label}</a>
        ${lacking(view, '').length > 0
          ? html`<a class="button" href=${toScreen(view.job, 'camera')}>${words.screens.camera}</a>`
          : ''}
        ${next ? html`<a class="button primary" href=${toPart(view.job, next.part)}>${text.next(next.label)}</a>` : ''}
      </div>`,
  }
}

/** The sections as they were made last, and of what. @type {{ of: unknown[], sections: unknown }} */
let last = { of: [], sections: '' }

/** The largest drawing there is: it is not made anew while all that it shows is the same.
 * @param {JobView} view @param {PlanSection[]} engine @param {string | undefined} next */
function drawn(view, engine, next) {
  const of = [view, open, state.wide, state.route, foldsTurned()]
  if (open === null || of.some((one, nth) => one !== last.of[nth])) {
    const sections = made(view, engine, next)
    last = { of: [view, open, state.wide, state.route, foldsTurned()], sections }
  }
  return last.sections
}

/** Where there is room, all lies open. @param {JobView} view @param {PlanSection[]} engine
 * @param {string | undefined} next */
function made(view, engine, next) {
  const { outside, parts, progress } = view.assessment
  /** @type {Map<string, Drawn>} */
  const drawn = new Map([...outside, ...parts].map((part) => [part.part, part]))
  const before = outsideSection(view)
  if (open === null || state.route.screen !== 'plan') {
    const isAsked = progress.looked === 0 && outside.some(({ seen }) => seen === 'not-looked')
    const turns = [
      (/** @type {Drawn} */ { part }) => part === next,
      (/** @type {Drawn} */ { seen }) => seen === 'not-looked',
      (/** @type {Drawn} */ { worst }) => worst !== null,
    ]
    const first = state.wide ? engine : openFirst(engine, drawn, turns, isAsked ? ROWS - before.rows : ROWS)
    open = new Set([...(isAsked ? [before] : []), ...first].map(({ title }) => title))
  }
  const isOpen = (/** @type {PlanSection} */ { title }) => open?.has(title) ?? false
  // What lies open leads; what is narrow or drawn small stands below it, on a phone side by side.
  const rank = (/** @type {PlanSection} */ section) =>
    isOpen(section) ? Number(!state.wide && isNarrow(section)) : 2
  return sections({
    name: `${view.job} plan`,
    sections: [before, ...engine].sort((a, b) => rank(a) - rank(b)),
    isOpen,
    parts: drawn,
    address: (part) => toPart(view.job, part),
  })
}

/** What is looked at next. Once a part has been, what comes before the opening is asked for no longer: the engine is
 * open. @param {JobView} view */
function nextOf({ assessment: { outside, parts, progress } }) {
  const inOrder = progress.looked === 0 ? [...outside, ...parts] : parts
  return inOrder.find(({ seen }) => seen === 'not-looked')
}
