// What the spec sheet allows for the quantity under the micrometer, beside the places; else the general rule.
/** @import { Bench } from './pad.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { toScreen } from '../route.js'
import { newLine } from '../sheet/line-key.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { nameOn } from './tools.js'

const text = words.measure

/** @param {Bench} here */
export function limits({ view, part, quantity }) {
  const { lines } = view.sheet
  const name = quantity === 'other' ? nameOn(view.job).trim() : ''
  const own = view.sheet_words.lines.filter((_, nth) => {
    const of = lines[nth]?.of
    return of?.kind === part.kind && of.quantity === quantity && (of.name ?? '').trim() === name
  })
  const rules = own.length > 0
    ? []
    : view.general_rules.filter((rule) => rule.kind === part.kind && rule.quantity === quantity)
  if (own.length + rules.length === 0) {
    return html`
      <p class="limits hint">
        ${text.noLimit} <a href=${toScreen(view.job, 'sheet', newLine(part.kind, quantity))}>${text.enterLimit}</a>
      </p>`
  }
  return html`
    <ul class="limits" aria-label=${text.limits}>
      ${own.map((line) => html`
        <li>
          ${own.length > 1 ? html`<span>${capitalised(line.aspect)}:</span>` : ''}
          ${line.new ? html`<span>${text.fresh} <strong>${line.new}</strong></span>` : ''}
          ${line.worn ? html`<span>${text.worn} <strong>${line.worn}</strong></span>` : ''}
        </li>`)}
      ${rules.map((rule) => html`<li><strong>${rule.limits}</strong> <span>${text.generalRule}</span></li>`)}
    </ul>`
}
