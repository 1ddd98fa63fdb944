// Why it happened: causes in order of likelihood, each with what speaks for and against it.
/** @import { CauseView, Evidence, JobView, NextLook, PlaceView, Unexplained } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { capitalised } from '../catalogue.js'
import { toPart } from '../route.js'
import { words } from '../words.js'

const text = words.causes

/** @param {JobView} view */
export function causes(view) {
  const { enough_seen, summary, causes, next_look, unexplained } = view.assessment.causes
  const labels = new Map(view.assessment.parts.map((part) => [part.part, part.label]))
  return {
    title: words.screens.causes,
    body: html`
      ${enough_seen ? '' : html`<p class="not-enough">${text.notEnough}</p>`}
      <p class="cause-summary">${summary}</p>
      ${next_look ? nextLook(view.job, next_look, labels) : ''}
      ${causes.length === 0 ? html`<p>${text.nothing}</p>` : html`
        <ol class="causes">${causes.map((cause) => drawn(view.job, cause, labels))}</ol>
        <p class="hint">${text.modest}</p>`}
      ${unexplained.length === 0 ? '' : misfits(view.job, unexplained, labels)}`,
  }
}

/** The look that would settle most, as a way to it. @param {string} job @param {NextLook} look
 * @param {Map<string, string>} labels */
const nextLook = (job, look, labels) => html`
  <section class="next-look" aria-labelledby="next-look">
    <h2 id="next-look">${text.nextLook}</h2>
    <p>${look.sentence}</p>
    <a class="button primary" href=${toPart(job, look.part)}>${labels.get(look.part) ?? look.part}</a>
  </section>`

/** What fits no cause. @param {string} job @param {Unexplained[]} all @param {Map<string, string>} labels */
const misfits = (job, all, labels) => html`
  <section aria-labelledby="misfits">
    <h2 id="misfits">${text.unexplained}</h2>
    <ul class="evidence">${all.map(({ words, parts }) => html`<li><p>${capitalised(words)}</p>${links(job, parts, labels)}</li>`)}</ul>
  </section>`

/** Causes at least this likely show their evidence unasked. */
const WORTH_READING = 0.2
/** Pieces of evidence shown before the rest is folded away. */
const FOREMOST = 4
/** Parts named at once; more are folded away, since the evidence itself says which they are. */
const AT_A_GLANCE = 4

/** @param {string} job @param {CauseView} cause @param {Map<string, string>} labels */
const drawn = (job, cause, labels) => html`
  <li class="cause">
    <h2>${capitalised(cause.name)}</h2>
    <p class="likelihood"><strong>${capitalised(cause.likelihood)}</strong>, ${cause.percent}</p>
    <p>${cause.plainly}</p>
    ${cause.probability >= WORTH_READING
      ? grounds(job, cause, labels)
      : html`<details><summary>${text.grounds}</summary>${grounds(job, cause, labels)}</details>`}
  </li>`

/** @param {string} job @param {CauseView} cause @param {Map<string, string>} labels */
const grounds = (job, cause, labels) => html`
  ${evidence(job, text.for, cause.evidence_for, labels)}
  ${evidence(job, text.against, cause.evidence_against, labels)}
  ${evidence(job, text.alone, cause.explains_alone, labels)}
  ${cause.places.length < 2 ? '' : html`<h3>${text.where}</h3><ul>${cause.places.map(place)}</ul>`}
  ${cause.check.length === 0 ? '' : html`<h3>${text.check}</h3><ul>${cause.check.map((line) => html`<li>${line}</li>`)}</ul>`}
  ${cause.put_right.length === 0 ? '' : html`<h3>${text.putRight}</h3><ul>${cause.put_right.map((line) => html`<li>${line}</li>`)}</ul>`}
  <p class="source">${text.source}: ${cause.source}</p>`

/** A place of a cause, as surely as it can be said. @param {PlaceView} place */
const place = ({ label, probability }) =>
  html`<li>${capitalised(label)}: ${text.about(Math.round(probability * 10) * 10)}</li>`

/** @param {string} job @param {string} heading @param {Evidence[]} all @param {Map<string, string>} labels */
function evidence(job, heading, all, labels) {
  if (all.length === 0) return ''
  const rest = all.slice(FOREMOST)
  const list = (/** @type {Evidence[]} */ some) =>
    html`<ul class="evidence">${some.map((piece) => pieceOf(job, piece, labels))}</ul>`
  return html`
    <h3>${heading}</h3>
    ${list(all.slice(0, FOREMOST))}
    ${rest.length === 0 ? '' : html`<details><summary>${text.more(rest.length)}</summary>${list(rest)}</details>`}`
}

/** @param {string} job @param {Evidence} piece @param {Map<string, string>} labels */
const pieceOf = (job, { words, parts, weight }, labels) => html`
  <li>
    <p>${capitalised(words)} ${bar(weight)}</p>
    ${parts.length > AT_A_GLANCE
      ? html`<details><summary>${text.parts(parts.length)}</summary>${links(job, parts, labels)}</details>`
      : links(job, parts, labels)}
  </li>`

/** @param {string} job @param {string[]} parts @param {Map<string, string>} labels */
const links = (job, parts, labels) =>
  parts.length === 0 ? '' : html`
    <ul class="part-links">${parts.map((part) => html`<li><a href=${toPart(job, part)}>${labels.get(part) ?? part}</a></li>`)}</ul>`

/** Doublings of the odds that fill the bar. */
const FULL = 5

/** How much a finding weighs, drawn as a dimension. @param {number} weight doublings of the odds */
function bar(weight) {
  const strength = Math.abs(weight)
  const length = 2 + 56 * Math.min(1, strength / FULL)
  return html`
    <span class="weight">
      <svg viewBox="0 0 60 12" width="60" height="12" aria-hidden="true" focusable="false">
        <path class="dimension" d="M1 1V11M59 1V11M1 6H59"/><path class="dimension-done" d=${`M1 6H${length.toFixed(1)}`}/>
      </svg>
      ${text.strength(strength)}
    </span>`
}
