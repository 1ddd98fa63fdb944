// What speaks for or against a cause, in words, the weightiest first.
/** @import { Evidence, JobView, Strength } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { strengthOf } from '../catalogue.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { dimension } from './dimension.js'

const text = words.causes

/** @typedef {(part: string) => string} Address where a part is opened */

/** Pieces of evidence shown before the rest is folded away; what is known of the engine's past is always shown. */
const FOREMOST = 4
/** Parts named at once; more are folded away, since the evidence itself says which they are. */
const AT_A_GLANCE = 2
/** Doublings of the odds that fill the bar. */
const FULL = 5

/** @param {JobView} view @returns {Map<string, string>} */
export const labelsOf = ({ assessment: { outside, parts } }) =>
  new Map([...outside, ...parts].map(({ part, label }) => [part, label]))

/** @param {Address} address @param {Evidence[]} all @param {Map<string, string>} labels */
export function evidence(address, all, labels) {
  if (all.length === 0) return ''
  const isForemost = (
    /** @type {Evidence} */ { parts },
    /** @type {number} */ nth,
  ) => nth < FOREMOST || parts.length === 0
  const foremost = all.filter(isForemost)
  const rest = all.filter((piece, nth) => !isForemost(piece, nth))
  const list = (/** @type {Evidence[]} */ some) =>
    html`<ul class="evidence">${some.map((piece) => pieceOf(address, piece, labels))}</ul>`
  return html`
    ${list(foremost)}
    ${rest.length === 0 ? '' : html`<details><summary>${text.more(rest.length)}</summary>${list(rest)}</details>`}`
}

/** @param {Address} address @param {string[]} parts @param {Map<string, string>} labels */
export const links = (address, parts, labels) =>
  parts.length === 0 ? '' : html`
    <ul class="part-links">${parts.map((part) =>
      html`<li><a href=${address(part)}>${labels.get(part) ?? part}</a></li>`)}</ul>`

/**
 * The same, folded where there are many.
 *
 * @param {Address} address @param {string[]} parts @param {Map<string, string>} labels
 */
export const foldedLinks = (address, parts, labels) => parts.length <= AT_A_GLANCE
  ? links(address, parts, labels)
  : html`<details><summary>${text.parts(parts.length)}</summary>${links(address, parts, labels)}</details>`

/** @param {Address} address @param {Evidence} piece @param {Map<string, string>} labels */
const pieceOf = (address, { words, parts, weight, strength, alone }, labels) => html`
  <li>
    <p>${capitalised(words)} ${weighed(weight, strength, alone)}</p>
    ${foldedLinks(address, parts, labels)}
  </li>`

/**
 * How much a finding weighs.
 *
 * @param {number} weight doublings of the odds @param {Strength} strength @param {boolean} alone
 */
const weighed = (weight, strength, alone) => html`
  <span class="weight">${dimension(Math.min(1, Math.abs(weight) / FULL))} ${strengthOf(strength).words}${alone
    ? `; ${text.alone}`
    : ''}</span>`
