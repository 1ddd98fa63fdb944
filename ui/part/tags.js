// What is seen on a part. A tap on a tag brings its four grades and its fields to the head of the screen, where all of
// them are in reach at once; the other tags draw together into one line. A tap on a grade saves.
/** @import { Grade, Tag, Zone } from '../types/api.d.ts' */
/** @import { Recorded } from './photos.js' */
/** @import { Route } from '../route.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { kindOf, tagOf } from '../catalogue.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { append } from '../edits/queue.js'
import { forgetTold } from '../edits/told.js'
import { swatch } from '../hatching/key.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { zones } from './zones.js'

const text = words.part
/** @type {readonly Grade[]} */
const GRADES = [1, 2, 3, 4]
/** Tags nearest to hand; with the answer that there is nothing to see they fill three rows. */
const NEAREST = 5
/** Stands among the tags after the nearest: that there is nothing to see. */
const NOTHING = 'nothing'
/** Stands among the tags before those that are seldom wanted. */
const MORE = 'more'

/**
 * @typedef {object} Entered
 * @property {Tag | ''} open the tag whose grades are unfolded
 * @property {Zone[]} ahead zones tapped before a grade was
 */

/** @param {string} job @param {string} part */
const entryOf = (job, part) =>
  formOf(`tag ${job} ${part}`, () => /** @type {Entered} */ ({ open: '', ahead: [] }))

/** Where the person came to last. @type {{ job: string, part: string } | null} */
let last = null

/** Folds the tag that was only unfolded, and unfolds the one that is to be looked at, if one is. The first that one
 * comes to is as it was when the page was ended. @param {Route} route */
export function unfoldAsked({ job, part, tag }) {
  const left = last && entryOf(last.job, last.part)
  if (left && left.entered.ahead.length === 0) left.forget()
  const { entered: { open }, enter } = entryOf(job, part)
  if (tag && (last || !open)) enter({ open: /** @type {Tag} */ (tag), ahead: [] })
  last = { job, part }
}

/** @param {string} job @param {Recorded} part */
export const hasOpenTag = (job, { kind, part }) => {
  const { open } = entryOf(job, part).entered
  return open !== '' && kindOf(kind).tags.includes(open)
}

/** Brings the open tag to the head of the screen, once it is drawn, unless all of it is in sight. */
export function toOpenTag() {
  const strip = document.querySelector('.tags-strip')
  const all = document.querySelector('.grades')
  const screen = document.querySelector('.screen-main')
  if (!strip || !all || !screen) return
  strip.scrollTo({ left: 0 })
  const { top, bottom } = screen.getBoundingClientRect()
  const isInSight = strip.getBoundingClientRect().top >= top && all.getBoundingClientRect().bottom <= bottom
  if (!isInSight) strip.scrollIntoView({ block: 'start' })
}

/** @param {string} job @param {Recorded} part @param {unknown} nothingSeen the answer of a part without any tag */
export function tags(job, part, nothingSeen) {
  const all = kindOf(part.kind).tags
  const entered = entryOf(job, part.part).entered.open
  const open = entered && all.includes(entered) ? entered : ''
  /** @type {(Tag | typeof NOTHING | typeof MORE)[]} */
  const shown = open ? all : [...all.slice(0, NEAREST), NOTHING]
  if (!open && all.length > NEAREST) shown.push(MORE, ...all.slice(NEAREST))
  // Keyed, so that a button that has the keyboard stays the same button when the others draw together.
  const draw = (/** @type {Tag | typeof NOTHING | typeof MORE} */ here) => {
    if (here === NOTHING) return nothingSeen
    return here === MORE ? html`<h3>${text.moreTags}</h3>` : tagButton(job, part, here)
  }
  return html`
    <section class="tagging" aria-labelledby="part-tags">
      <h2 id="part-tags">${text.tags}</h2>
      <div class=${open ? 'tags tags-strip' : 'tags'}>${repeat(shown, (here) => here, draw)}</div>
      ${open ? grades(job, part, open) : ''}
    </section>`
}

/** @param {Recorded} part @param {Tag} tag */
const findingOf = (part, tag) => part.findings.find((finding) => finding.tag === tag)

/** @param {string} job @param {Recorded} part @param {Tag} tag */
function tagButton(job, part, tag) {
  const finding = findingOf(part, tag)
  const name = capitalised(tagOf(tag).name)
  const { entered, enter } = entryOf(job, part.part)
  const isOpen = entered.open === tag
  const unfold = () => {
    forgetTold()
    enter({ open: isOpen ? '' : tag, ahead: [] })
    queueMicrotask(toOpenTag)
  }
  return html`
    <button type="button" class=${finding ? 'tag tag-set' : 'tag'} aria-expanded=${isOpen ? 'true' : 'false'}
      @click=${unfold}>
      ${finding ? swatch(finding.grade) : ''}
      <span>${finding ? text.tagged(name, finding.grade) : name}</span>
    </button>`
}

/** @param {string} job @param {Recorded} part @param {Tag} tag */
function grades(job, part, tag) {
  const row = tagOf(tag)
  const finding = findingOf(part, tag)
  const form = entryOf(job, part.part)
  const { ahead } = form.entered
  const zonesOfTag = finding?.zones ?? ahead
  /** @param {Grade} grade */
  const choose = async (grade) => {
    // A second tap on the same grade says nothing new.
    if (finding?.grade === grade) return
    form.enter({ ahead: [] })
    const isSaved = await append(job, { do: 'tag', part: part.part, tag, grade, zones: zonesOfTag })
    if (!isSaved) form.enter({ ahead })
  }
  /** Before a grade is chosen the fields wait; after that each tap saves. @param {Zone} zone */
  const toggle = (zone) => {
    const zones = zonesOfTag.includes(zone) ? zonesOfTag.filter((other) => other !== zone) : [...zonesOfTag, zone]
    if (finding) append(job, { do: 'tag', part: part.part, tag, grade: finding.grade, zones })
    else form.enter({ ahead: zones })
  }
  return html`
    <div class="grades" role="group" aria-label="${capitalised(row.name)}: ${text.howBad}">
      ${ahead.length > 0 ? foundDraft(form) : ''}
      <div class="tag-head">
        <p class="hint">${row.meaning}</p>
        ${finding ? html`
          <button type="button" class="quiet" aria-label=${text.untag(row.name)}
            @click=${() => append(job, { do: 'untag', part: part.part, tag })}>${text.untagShort}</button>` : ''}
      </div>
      <div class="grade-choice">
        ${GRADES.map((grade) => gradeButton(grade, row.grades[grade - 1] ?? '', finding?.grade === grade, choose))}
      </div>
      ${zones({
        map: kindOf(part.kind).zone_map,
        grade: finding?.grade ?? null,
        marked: zonesOfTag,
        pointed: state.route.zone,
        toggle,
      })}
    </div>`
}

/** @param {Grade} grade @param {string} sentence @param {boolean} isChosen @param {(grade: Grade) => void} choose */
const gradeButton = (grade, sentence, isChosen, choose) => html`
  <button type="button" class="grade" aria-pressed=${isChosen ? 'true' : 'false'}
    aria-label=${text.grade(grade, sentence)} @click=${() => choose(grade)}>
    ${swatch(grade)} <span>${grade}: ${sentence}</span>
  </button>`
