// All decisions, the severest first. Parts with the same outcome for the same reason stand together.
/** @import { JobView, Outcome, PartView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue, outcomeWords } from '../catalogue.js'
import { toPart, toShop } from '../route.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { reason } from './decision.js'

const text = words.decisions

/** @param {JobView} view */
export function decisions(view) {
  const { parts } = view.assessment
  const severestFirst = catalogue().outcomes.map(({ id }) => id).reverse()
  return {
    title: words.screens.decisions,
    body: html`
      <a class="button" href=${toShop('rules')}>${text.allRules}</a>
      ${parts.length === 0
        ? html`<p>${text.none}</p>`
        : html`
          <p class="hint">${catalogue().governs}</p>
          ${severestFirst.map((outcome) => group(
            view.job,
            outcome,
            parts.filter((part) => part.decision.outcome === outcome),
          ))}`}`,
  }
}

/** @param {string} job @param {Outcome} outcome @param {PartView[]} parts */
function group(job, outcome, parts) {
  if (parts.length === 0) return ''
  const id = `outcome-${outcome}`
  const overruled = parts.filter((part) => part.decision.overruled_because !== null)
  const byRules = parts.filter((part) => part.decision.overruled_because === null)
  return html`
    <section class="outcome" aria-labelledby=${id}>
      <h2 id=${id}>
        ${capitalised(outcomeWords(outcome))} <span class="outcome-count">${text.parts(parts.length)}</span>
      </h2>
      <ul class="judgements">
        ${overruled.map((part) => otherwise(job, part))}
        ${alike(byRules).map((parts) => judgement(job, parts))}
      </ul>
    </section>`
}

/** @param {PartView[]} parts @returns {PartView[][]} */
function alike(parts) {
  /** @type {Map<string, PartView[]>} */
  const groups = new Map()
  for (const part of parts) {
    const key = JSON.stringify(part.decision.reasons.map(({ because }) => because))
    groups.set(key, [...(groups.get(key) ?? []), part])
  }
  return [...groups.values()]
}

/** @param {string} job @param {PartView[]} parts */
function judgement(job, parts) {
  const first = parts[0]
  if (!first) return ''
  const [deciding, ...others] = first.decision.reasons
  const unseen = parts.filter((part) => !part.decision.looked_at)
  return html`
    <li class="judgement">
      <p>${deciding
        ? capitalised(deciding.because)
        : text.noReasons} ${deciding
        ? html`<span class="source">${text.source}: ${deciding.source}</span>`
        : ''}</p>
      ${links(job, parts.filter((part) => part.decision.looked_at))}
      ${unseen.length === 0 ? '' : html`<span class="not-looked-flag">${text.notLooked}</span> ${links(job, unseen)}`}
      ${others.length === 0 ? '' : html`
        <details><summary>${text.further}</summary><ul class="reasons">${others.map(reason)}</ul></details>`}
    </li>`
}

/** Both views stand side by side. @param {string} job @param {PartView} part */
function otherwise(job, part) {
  const { outcome, by_rules, overruled_because, reasons } = part.decision
  return html`
    <li class="judgement overruled">
      <span class="overruled-flag">${text.overruled}</span>
      ${links(job, [part])}
      <p>${text.personSays(outcomeWords(outcome))} ${text.because(overruled_because ?? '')}</p>
      <p>${text.rulesSay(outcomeWords(by_rules))}</p>
      <ul class="reasons">${reasons.map(reason)}</ul>
    </li>`
}

/** @param {string} job @param {PartView[]} parts */
const links = (job, parts) => html`
  <ul class="part-links">
    ${parts.map((part) => html`<li><a href=${toPart(job, part.part)}>${part.label}</a></li>`)}
  </ul>`
