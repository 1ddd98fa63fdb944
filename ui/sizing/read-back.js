// What came back from the machine shop, beside what was asked for.
/** @import { ReadBack, ReadBackLine } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { folded } from '../controls/folded.js'
import { table } from '../controls/table.js'
import { verdictMark } from '../measure/verdict.js'
import { toMeasure } from '../route.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.sizing

/** @param {string} job @param {ReadBack[]} all */
export const readBack = (job, all) => all.length === 0 ? '' : html`
  <section aria-labelledby="sizes-back">
    <h2 id="sizes-back">${text.back}</h2>
    <p class="hint">${text.backHint}</p>
    ${all.map((group) => returned(job, group))}
  </section>`

/** @param {string} job @param {ReadBack} back */
function returned(job, { label, asked, confirmed, parts, quantity }) {
  const next = parts.find(({ verdict }) => verdict === null) ?? parts.find(({ problem }) => problem) ?? parts[0]
  const problems = parts.filter(({ shown, problem }) => shown && problem).length
  return html`
    <h3>${capitalised(label)}: <span class=${confirmed ? 'mark-free' : 'mark-held'}>${confirmed
      ? text.confirmed
      : text.unconfirmed}</span></h3>
    ${asked ? html`<p>${text.asked(asked)}</p>` : ''}
    ${parts.some(({ shown }) => shown) ? folded({
      name: `${job} sizes back ${label}`,
      isOpen: state.wide,
      summary: html`${text.each} ${problems === 0
        ? ''
        : html`<span class="fold-facts">${text.withFaults(problems)}</span>`}`,
      body: table({
        label: capitalised(label),
        heads: [text.part, text.machined, text.verdict],
        rows: parts.map((line) =>
          ({
            head: line.label,
            cells: [line.shown || text.notMeasured, judged(line)],
            mark: line.verdict === 'outside' ? 'decides' : '',
          })),
      }),
    }) : ''}
    ${next
      ? html`<a class="button" href=${toMeasure(job, next.part, quantity, 'machined')}>${confirmed
        ? text.measureAgain
        : text.measureMachined(next.label)}</a>`
      : ''}`
}

/** @param {ReadBackLine} line */
const judged = ({ verdict, problem }) =>
  (verdict ? html`${verdictMark(verdict)} ${capitalised(problem)}` : capitalised(problem))
