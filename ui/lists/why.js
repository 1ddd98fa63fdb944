// What put an item on its list, one tap from where it was found.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { toPart, toScreen } from '../route.js'
import { words } from '../words.js'

const text = words.lists

/** @param {string} because */
export const why = (because) => html`<p class="why"><span class="why-lead">${text.why}</span> ${because}</p>`

/** The ways to the parts, for a row of further things: the worst at once, the others folded away.
 * @param {JobView} view @param {string[]} parts */
export function found(view, parts) {
  const [worst, ...others] = parts
    .map((name) => view.assessment.parts.find(({ part }) => part === name))
    .filter((part) => part !== undefined)
    .sort((one, other) => (other.worst ?? 0) - (one.worst ?? 0))
  if (!worst) return ''
  return html`
    <a class="found" href=${toPart(view.job, worst.part)}>${worst.label}</a>
    ${others.length === 0 ? '' : html`
      <details>
        <summary>${text.more(others.length)}</summary>
        <ul class="part-links">${others.map(({ part, label }) =>
          html`<li><a href=${toPart(view.job, part)}>${label}</a></li>`)}</ul>
      </details>`}`
}

/** What a list asks for because of a cause. @param {string} job */
export const toCauses = (job) => html`<a class="found" href=${toScreen(job, 'causes')}>${text.toCauses}</a>`
