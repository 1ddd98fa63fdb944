// What is measured of a part, in short, on the screen of the part.
/** @import { JobView, PartView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue } from '../catalogue.js'
import { toMeasure } from '../route.js'
import { words } from '../words.js'
import { goneOf } from './before-apart.js'
import { shortFigures } from './figures.js'

const text = words.measure

/** @param {JobView} view @param {PartView} part */
export function measured(view, part) {
  const phases = catalogue().phases.map(({ id, label }) => ({
    id,
    label,
    count: part.readings.filter(({ phase, stands }) => phase === id && stands).length,
    figures: part.figures.filter(({ phase }) => phase === id),
  })).filter(({ count, figures }) => count + figures.length > 0)
  return html`
    <section class="measured" aria-labelledby="part-measured">
      <h2 id="part-measured">${text.measured}</h2>
      <div class="measured-way">
        <a class="button" href=${toMeasure(view.job, part.part)}>${text.measure}</a>
        <p>${phases.length === 0
          ? text.nothingMeasured
          : phases.map(({ count, label }) => text.readCount(count, label)).join(', ')}</p>
      </div>
      ${goneOf(view, part)}
      ${phases.map(({ label, figures }) => figures.length === 0 ? '' : html`
        ${phases.length > 1 ? html`<h3>${label.charAt(0).toUpperCase()}${label.slice(1)}</h3>` : ''}
        ${shortFigures(figures)}`)}
    </section>`
}
