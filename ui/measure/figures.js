// What follows from the readings of a part: each figure with its limits, its verdict and the reason for it.
/** @import { Figure } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { conformityOf } from '../catalogue.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { verdictMark, verdictOf } from './verdict.js'

const text = words.measure

/** @param {Figure[]} all */
export const figures = (all) =>
  html`<ul class="figures">${all.map((figure) => html`<li class="figure">${head(figure)}${grounds(figure)}</li>`)}</ul>`

/** In a line: what each is, and what was judged of it. @param {Figure[]} all */
export const figuresInWords = (all) => all.map((figure) => {
  const verdict = verdictOf(figure)
  const judged = verdict && verdict !== 'open' ? `, ${conformityOf(verdict).words}` : ''
  return `${capitalised(figure.name)} ${figure.shown}${judged}`
}).join('; ')

/** Without the grounds, where there is little room. @param {Figure[]} all */
export const shortFigures = (all) =>
  html`<ul class="figures figures-short">${all.map((figure) => html`<li class="figure">${head(figure)}</li>`)}</ul>`

/** @param {Figure} figure */
function head(figure) {
  const verdict = verdictOf(figure)
  return html`
    <p class="figure-head">
      <span class="figure-name">${capitalised(figure.name)}</span>
      <strong class="figure-shown">${figure.shown}</strong>
      ${verdict ? verdictMark(verdict) : ''}
    </p>`
}

/** @param {Figure} figure */
function grounds({ because, limits, general, source }) {
  const rule = general ? text.generalRule : source
  return html`
    <p class="hint">${capitalised(because)}
      ${limits && rule ? html`<span class="figure-source">${capitalised(rule)}.</span>` : ''}</p>`
}
