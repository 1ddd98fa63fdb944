// The evidence of a cause on the engine's plan: which parts speak for it, which against it, and where it may be.
/** @import { CauseView, Evidence, JobView, PlaceView } from '../types/api.d.ts' */
/** @import { Note } from '../plan/drawing.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { strengthAt } from '../catalogue.js'
import { hatchings } from '../hatching/key.js'
import { openFirst } from '../plan/open-first.js'
import { sections } from '../plan/sections.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { letters } from './letters.js'

const text = words.causes

/** So many rows of the plan lie open on a phone, */
const ROWS = 9
/** and no section of more. */
const MOST_ROWS = 13

/** @typedef {object} Side what one part says for the cause, or against it
 * @property {number} weight doublings of the odds
 * @property {Evidence[]} pieces
 *
 * @typedef {object} Said all that one part says
 * @property {Side} for
 * @property {Side} against
 * @property {PlaceView[]} places where the cause may be, and the part is of it
 */

/** @param {JobView} view @param {CauseView} cause @param {(part: string) => string} address where a part is opened */
export function evidencePlan(view, cause, address) {
  const said = saidOf(cause)
  if (said.size === 0) return html`<p>${text.noEvidence}</p>`
  const letter = letters(cause)
  /** @type {Map<string, Note>} */
  const notes = new Map([...said].map(([part, says]) => [part, noteOf(says, letter)]))
  const parts = new Map(view.assessment.parts.map((part) => [part.part, part]))
  const noted = (view.plan?.sections ?? []).filter(({ cells }) => cells.some(({ part }) => notes.has(part)))
  const short = noted.filter(({ rows }) => rows <= MOST_ROWS)
  const open = state.wide ? new Set(noted) : openFirst(short, parts, [({ part }) => notes.has(part)], ROWS)
  return html`
    ${evidenceKey([...said.values()])}
    ${hatchings(view.assessment.parts.filter(({ part }) => notes.has(part)))}
    ${sections({
      name: `${view.job} evidence ${cause.id}`,
      sections: noted,
      isOpen: (section) => open.has(section),
      parts,
      notes,
      address,
    })}`
}

/** A finding on several parts is shared out among them. @param {CauseView} cause @returns {Map<string, Said>} */
function saidOf({ evidence_for, evidence_against, places }) {
  /** @type {Map<string, Said>} */
  const all = new Map()
  const of = (/** @type {string} */ part) => {
    const said = all.get(part) ?? { for: { weight: 0, pieces: [] }, against: { weight: 0, pieces: [] }, places: [] }
    all.set(part, said)
    return said
  }
  const share = (/** @type {'for' | 'against'} */ side, /** @type {Evidence} */ piece) => {
    for (const part of piece.parts) {
      const said = of(part)[side]
      said.weight += Math.abs(piece.weight) / piece.parts.length
      said.pieces.push(piece)
    }
  }
  evidence_for.forEach((piece) => share('for', piece))
  evidence_against.forEach((piece) => share('against', piece))
  places.forEach((place) => place.parts.forEach((part) => of(part).places.push(place)))
  return all
}

/** @param {Said} said @param {Map<PlaceView, string>} letter @returns {Note} */
function noteOf(said, letter) {
  const isBoth = said.for.weight > 0 && said.against.weight > 0
  const flags = said.places.map((place) => letter.get(place)).join(' ')
  return {
    words: [
      ...sideInWords(said.for, text.speaksFor),
      ...sideInWords(said.against, text.speaksAgainst),
      ...said.places.map((place) => text.placeOf(letter.get(place) ?? '', place.label)),
    ].join('; '),
    mark: html`
      ${said.for.weight > 0 ? ring('for', said.for.weight, isBoth) : ''}
      ${said.against.weight > 0 ? ring('against', said.against.weight, isBoth) : ''}
      ${flags ? html`<span class="place-flag" aria-hidden="true">${flags}</span>` : ''}`,
  }
}

/** The weightiest piece for this part, and how many more there are.
 * @param {Side} side @param {(strength: string, words: string, more: number) => string} say */
function sideInWords({ weight, pieces }, say) {
  const share = (/** @type {Evidence} */ { weight, parts }) => Math.abs(weight) / parts.length
  const [first, ...more] = [...pieces].sort((a, b) => share(b) - share(a))
  return first ? [say(strengthAt(weight).words, first.words, more.length)] : []
}

/** Whole round the part, or its own half where both are drawn. @param {'for' | 'against'} side @param {number} weight
 * @param {boolean} isHalf */
const ring = (side, weight, isHalf) =>
  html`<span class=${`ring ring-${side} ring-${strengthAt(weight).id} ${isHalf ? 'ring-half' : ''}`}
    aria-hidden="true"></span>`

/** Explains what is drawn, and no more. @param {Said[]} all */
const evidenceKey = (all) => html`
  <section class="evidence-key" aria-labelledby="evidence-key">
    <h2 id="evidence-key">${text.onPlan}</h2>
    <ul class="hatch-key">
      ${all.some((said) => said.for.weight > 0)
        ? html`<li><span class="ring-swatch">${ring('for', 2, false)}</span> ${text.keyFor}</li>`
        : ''}
      ${all.some((said) => said.against.weight > 0)
        ? html`<li><span class="ring-swatch">${ring('against', 2, false)}</span> ${text.keyAgainst}</li>`
        : ''}
      ${all.some(({ places }) => places.length > 0)
        ? html`<li><span class="place-flag">A</span> ${text.keyPlace}</li>`
        : ''}
    </ul>
    <p class="hint">${text.keyWeight}</p>
  </section>`
