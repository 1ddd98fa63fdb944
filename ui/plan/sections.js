// The sections of the plan: each a drawing to be tapped, or folded to a small one.
/** @import { PlanSection } from '../types/api.d.ts' */
/** @import { Drawing, Drawn, Note } from './drawing.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { folded } from '../controls/folded.js'
import { words } from '../words.js'
import { drawing } from './drawing.js'
import { isNarrow } from './open-first.js'
import { small } from './small.js'

const text = words.plan

/**
 * @typedef {object} Sections
 * @property {string} name by which is kept what was opened
 * @property {PlanSection[]} sections
 * @property {(section: PlanSection) => boolean} isOpen at first
 *
 * @typedef {Omit<Drawing, 'section'> & Sections} Plan
 */

/** @param {Plan} plan */
export const sections = ({ name, sections: all, isOpen, ...rest }) => html`
  <div class="plan-sections">
    ${all.map((section) => folded({
      name: `${name} ${section.cells[0]?.part}`,
      look: `plan-section ${isNarrow(section) ? 'plan-narrow' : ''}`,
      isOpen: isOpen(section),
      summary: html`
        <span class="fold-name">${section.title}</span>
        <span class="fold-facts plan-facts">${facts(section, rest.parts, rest.notes)}</span>
        ${small(section, rest.parts, rest.notes)}`,
      body: () => drawing({ section, ...rest }),
    }))}
  </div>`

/** What stands out, in words. @param {PlanSection} section @param {Map<string, Drawn>} parts
 * @param {Map<string, Note>} [notes] */
function facts({ cells }, parts, notes) {
  if (notes) return text.noted(cells.filter(({ part }) => notes.has(part)).length)
  const all = cells.flatMap(({ part }) => parts.get(part) ?? [])
  const isAlong = all.some(({ seen }) => seen === 'along')
  const notLooked = all.filter(({ seen }) => seen === 'not-looked').length
  const worn = all.filter(({ worst }) => worst !== null)
  const worst = Math.max(...worn.map(({ worst }) => worst ?? 0))
  return [
    notLooked > 0 ? text.toLookAt(notLooked) : '',
    worn.length > 0 ? text.wornUpTo(worn.length, worst) : '',
  ].filter(Boolean).join('; ') || text.states[isAlong ? 'along' : 'clean']
}
