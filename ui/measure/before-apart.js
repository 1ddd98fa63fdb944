// What can be measured only while the engine is together: asked for before the part comes off, and no longer once it
// has.
/** @import { BeforeApart, JobView, Quantity, PartView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { toMeasure } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'

const text = words.measure

/** What was open when a part was opened. It stays there as long as the part is open, so that nothing moves from under
 * the finger that tells what it sees. */
const kept = { route: state.route, names: /** @type {string[]} */ ([]) }

/** Of the part in the hand, or about to be: what goes with it. @param {JobView} view @param {PartView} part */
export function beforeItComesApart(view, { part }) {
  const all = view.assessment.before_apart.filter(({ before }) => before.includes(part))
  if (kept.route !== state.route) {
    const names = all.filter(({ chance }) => chance === 'open').map(({ words: name }) => name)
    Object.assign(kept, { route: state.route, names })
  }
  const rows = all.filter(({ words: name }) => kept.names.includes(name))
  if (rows.length === 0) return ''
  return html`<ul class="rows before-apart">${rows.map((one) => row(view, one, text.beforeApart))}</ul>`
}

/** What goes with the caps of rods and mains, in one line that unfolds; and whether any of it is still to be measured.
 * @param {JobView} view @param {boolean} unfolded */
export function beforeTheCapsComeOff(view, unfolded) {
  const all = view.assessment.before_apart.filter(({ before }) => before.some(isUnderCap))
  const open = all.filter(({ chance }) => chance === 'open')
  const isOpen = open.length > 0
  const fold = all.length === 0 ? '' : html`
    <details class="before-apart" ?open=${unfolded && isOpen}>
      <summary>${text.beforeCaps(open.length)}</summary>
      <ul class="rows">${all.map((one) => row(view, one))}</ul>
    </details>`
  return { isOpen, fold }
}

/** @param {string} part */
const isUnderCap = (part) => /^(main|rod)-shell\./.test(part)

/** @param {JobView} view @param {BeforeApart} one @param {string} [asked] */
function row(view, { part, quantity, words: what, chance }, asked = text.notMeasured) {
  const stands = { open: asked, taken: valueOf(view, part, quantity), gone: text.gone }[chance]
  return html`
    <li>
      <a class="row" href=${toMeasure(view.job, part, quantity)}>
        <span class="row-name">${what}</span>
        <span class=${chance === 'taken' ? 'mark-read' : 'mark-missing'}>${stands}</span>
      </a>
    </li>`
}

/** What was read, as the engine was found. @param {JobView} view @param {string} part @param {Quantity} quantity */
const valueOf = ({ assessment }, part, quantity) =>
  assessment.parts.find((one) => one.part === part)?.readings
    .filter((one) => one.quantity === quantity && one.phase === 'found' && one.stands).at(-1)?.value ?? ''

/** Whether the chance to measure it as found is gone.
 * @param {JobView} view @param {string} part @param {string} quantity */
export const isGone = ({ assessment }, part, quantity) =>
  assessment.before_apart.some((one) => one.part === part && one.quantity === quantity && one.chance === 'gone')

/** What can no longer be measured of a part, on its own screen. @param {JobView} view @param {PartView} part */
export const goneOf = ({ assessment }, { part }) =>
  assessment.before_apart.filter((one) => one.part === part && one.chance === 'gone').map(({ words: what }) =>
    html`<p class="hint">${text.goneOf(what)}</p>`)
