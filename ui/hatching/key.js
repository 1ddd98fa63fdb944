// What the hatchings mean, of those that are drawn, and how many parts have each.
/** @import { PartView, Seen } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { hatching } from '../plan/symbols.js'
import { words } from '../words.js'

const text = words.plan

/** @typedef {Pick<PartView, 'seen' | 'worst'>} Hatched */

/** What needs a person stands first. @type {[Seen, number | null, string][]} */
const HATCHINGS = [
  ['not-looked', null, text.states['not-looked']],
  ...[4, 3, 2, 1].map((grade) => /** @type {[Seen, number, string]} */ (['worn', grade, text.grade(grade)])),
  ['clean', null, text.states.clean],
  ['along', null, text.states.along],
]

/** @param {Hatched[]} parts what is drawn */
export const key = (parts) => list(parts, (name, n) => html`${name}: <strong>${n}</strong>`)

/** The same without the numbers. @param {Hatched[]} parts */
export const hatchings = (parts) => list(parts, (name) => name)

/** @param {Hatched[]} parts @param {(name: string, n: number) => unknown} say */
const list = (parts, say) => html`
  <ul class="hatch-key" aria-label=${text.key}>
    ${HATCHINGS.map(([seen, grade, name]) => {
      const n = parts.filter((part) => part.worst === grade && (grade !== null || part.seen === seen)).length
      return n === 0 ? '' : html`<li>${swatch(grade, seen)} <span>${say(name, n)}</span></li>`
    })}
  </ul>`

/** A small field with a grade's hatching. @param {number | null} grade @param {string} [seen] */
export const swatch = (grade, seen = '') => html`
  <svg class=${`swatch ${seen}`} viewBox="0 0 32 20" aria-hidden="true" focusable="false">
    <rect class="symbol-shape" x="1.5" y="1.5" width="29" height="17" fill=${hatching(grade)}/>
  </svg>`
