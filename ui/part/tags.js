// What is seen on a part. A tap on a tag unfolds its four grades right there; a tap on a grade saves.
/** @import { Finding, Grade, Tag, Zone } from '../types/api.d.ts' */
/** @import { Recorded } from './photos.js' */
/** @import { Route } from '../route.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { kindOf, tagOf } from '../catalogue.js'
import { append } from '../edits/queue.js'
import { swatch } from '../hatching/key.js'
import { redraw, state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { zones } from './zones.js'

const text = words.part
/** @type {readonly Grade[]} */
const GRADES = [1, 2, 3, 4]
/** Tags nearest to hand. */
const NEAREST = 5
/** Buttons side by side; the grades unfold under the row of their tag. */
const COLUMNS = 2
/** Stands among the tags where the grades of the open one unfold. */
const UNFOLDED = 'unfolded'

/** The tag whose grades are unfolded. @type {Tag | ''} */
let openTag = ''
/** Zones tapped before a grade was. @type {Zone[]} */
let zonesAhead = []

/** Unfolds the tag that is to be looked at, if one is. @param {Route} route */
export function unfoldAsked({ tag }) {
  openTag = /** @type {Tag | ''} */ (tag)
  zonesAhead = []
}

/** @param {string} job @param {Recorded} part */
export function tags(job, part) {
  const all = kindOf(part.kind).tags
  return html`
    <section aria-labelledby="part-tags">
      <h2 id="part-tags">${text.tags}</h2>
      ${rows(job, part, all.slice(0, NEAREST))}
      ${all.length > NEAREST ? html`<h3>${text.moreTags}</h3> ${rows(job, part, all.slice(NEAREST))}` : ''}
    </section>`
}

/** @param {string} job @param {Recorded} part @param {Tag[]} tags */
function rows(job, part, tags) {
  /** @type {(Tag | typeof UNFOLDED)[]} */
  const shown = [...tags]
  if (openTag && tags.includes(openTag)) {
    const endOfRow = (Math.floor(tags.indexOf(openTag) / COLUMNS) + 1) * COLUMNS
    shown.splice(endOfRow, 0, UNFOLDED)
  }
  // Keyed, so that a button that has the keyboard stays the same button when the grades move to another row.
  const draw = (/** @type {Tag | typeof UNFOLDED} */ here) =>
    here === UNFOLDED ? openTag && grades(job, part, openTag) : tagButton(part, here)
  return html`<div class="tags">${repeat(shown, (here) => here, draw)}</div>`
}

/** @param {Recorded} part @param {Tag} tag */
const findingOf = (part, tag) => part.findings.find((finding) => finding.tag === tag)

/** @param {Recorded} part @param {Tag} tag */
function tagButton(part, tag) {
  const finding = findingOf(part, tag)
  const name = capitalised(tagOf(tag).name)
  const isOpen = openTag === tag
  const unfold = () => {
    openTag = isOpen ? '' : tag
    zonesAhead = []
    redraw()
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
  /** @param {Grade} grade */
  const choose = (grade) => {
    // A second tap on the same grade says nothing new.
    if (finding?.grade === grade) return
    append(job, { do: 'tag', part: part.part, tag, grade, zones: marked(finding) })
    zonesAhead = []
  }
  return html`
    <div class="grades" role="group" aria-label="${capitalised(row.name)}: ${text.howBad}">
      <p class="hint">${row.meaning}</p>
      ${GRADES.map((grade) => html`
        <button type="button" class="grade" aria-pressed=${finding?.grade === grade ? 'true' : 'false'}
          @click=${() => choose(grade)}>
          ${swatch(grade)} <span>${text.grade(grade, row.grades[grade - 1] ?? '')}</span>
        </button>`)}
      ${zones({
        map: kindOf(part.kind).zone_map,
        grade: finding?.grade ?? null,
        marked: marked(finding),
        pointed: state.route.zone,
        toggle: (zone) => toggle(job, part, tag, zone),
      })}
      ${finding ? html`
        <button type="button" class="quiet" @click=${() => append(job, { do: 'untag', part: part.part, tag })}>
          ${text.untag(row.name)}
        </button>` : ''}
    </div>`
}

/** @param {Finding | undefined} finding */
const marked = (finding) => finding?.zones ?? zonesAhead

/** Before a grade is chosen the fields wait; after that each tap saves.
 * @param {string} job @param {Recorded} part @param {Tag} tag @param {Zone} zone */
function toggle(job, part, tag, zone) {
  const finding = findingOf(part, tag)
  const before = marked(finding)
  const zones = before.includes(zone) ? before.filter((other) => other !== zone) : [...before, zone]
  if (finding) return append(job, { do: 'tag', part: part.part, tag, grade: finding.grade, zones })
  zonesAhead = zones
  redraw()
}
