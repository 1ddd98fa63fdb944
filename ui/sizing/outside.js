// Every figure of the engine that is outside its limits or too close to call.
/** @import { Figure, JobView, PartView, Conformity } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { toMeasure } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.sizing

/** @param {JobView} view */
export function outside(view) {
  const all = view.assessment.parts.flatMap((part) => standing(part).map((figure) => ({ part, figure })))
  const of = (/** @type {Conformity} */ verdict) => all.filter(({ figure }) => figure.verdict === verdict)
  const isClear = of('outside').length + of('too-close').length === 0
  if (isClear && !all.some(({ figure }) => figure.verdict)) return ''
  return html`
    <section aria-labelledby="sizes-outside">
      <h2 id="sizes-outside">${text.figures}</h2>
      ${isClear ? html`<p>${text.allWithin}</p>` : ''}
      ${list(view.job, text.outside, of('outside'))}
      ${list(view.job, text.tooClose, of('too-close'))}
    </section>`
}

/** What was measured later in the rebuild stands for what was found. @param {PartView} part */
const standing = ({ figures }) =>
  figures.filter((figure) => !figures.some((other) =>
    other.name === figure.name && phaseOrder(other.phase) > phaseOrder(figure.phase)))

/** @param {string} phase */
const phaseOrder = (phase) => catalogue().phases.findIndex(({ id }) => id === phase)

/** @param {string} job @param {string} heading @param {{ part: PartView, figure: Figure }[]} found */
const list = (job, heading, found) => found.length === 0 ? '' : folded({
  name: `${job} sizes ${heading}`,
  isOpen: state.wide,
  summary: html`${heading} <span class="fold-facts">${text.figureCount(found.length)}</span>`,
  body: html`<ul class="outside">${found.map(({ part, figure }) => html`
    <li>
      <a href=${toMeasure(job, part.part, figure.quantity, figure.phase)}>${part.label}, ${figure.name}</a>
      ${figure.phase === 'found' ? '' : html`<span class="hint">${phaseWords(figure.phase)}</span>`}
      <p>${capitalised(figure.because)} ${figure.source
        ? html`<span class="source">${text.source}: ${figure.source}</span>`
        : ''}</p>
    </li>`)}</ul>`,
})

/** @param {string} phase */
const phaseWords = (phase) => catalogue().phases.find(({ id }) => id === phase)?.label ?? phase
