// Which photo is to stand beside one: first those of the other shell of the same bearing and of the same part.
/** @import { Screen } from '../frame/screens.js' */
/** @import { PartPhoto } from './all-photos.js' */
/** @import { Recorded } from './photos.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { photoAddress } from '../backend.js'
import { measure, overlay } from '../markup/overlay.js'
import { toPair } from '../route.js'
import { words } from '../words.js'
import { addressOf, nameOf, photosOf } from './all-photos.js'

const text = words.part

/** @param {string} job @param {Recorded[]} walk @param {PartPhoto} here @returns {Screen} */
export function chooseBeside(job, walk, here) {
  const all = photosOf(walk).filter(({ part, photo }) => part !== here.part || photo !== here.photo)
  const mate = otherShell(here.part.part)
  const isNear = (/** @type {PartPhoto} */ { part }) => part === here.part || part.part === mate
  // The other shell before the same part.
  const near = all.filter(isNear).sort((a, b) => Number(a.part === here.part) - Number(b.part === here.part))
  const far = all.filter((other) => !isNear(other))
  const list = (/** @type {PartPhoto[]} */ photos) => html`
    <ul class="thumbs thumbs-named">${photos.map((other) => html`<li>${choice(job, here, other)}</li>`)}</ul>`
  return {
    title: text.chooseBeside,
    body: html`
      <p>${nameOf(here)}</p>
      ${all.length === 0 ? html`<p class="notice">${text.nothingBeside}</p>` : ''}
      ${near.length > 0 ? html`<h2>${mate ? text.sameBearing : text.samePart}</h2>${list(near)}` : ''}
      ${far.length > 0 ? html`<h2>${text.otherParts}</h2>${list(far)}` : ''}`,
    bar: html`<div class="bar"><a class="button" href=${addressOf(job, here)}>${text.backToPhoto}</a></div>`,
  }
}

/** The other half of a bearing; nothing for what has none. @param {string} part */
function otherShell(part) {
  if (part.endsWith('.upper')) return part.replace(/upper$/, 'lower')
  return part.endsWith('.lower') ? part.replace(/lower$/, 'upper') : ''
}

/** @param {string} job @param {PartPhoto} here @param {PartPhoto} other */
function choice(job, here, other) {
  const { part, photo } = other
  const markups = (part.drawn[photo] ?? []).map(({ markup }) => markup)
  return html`
    <a class="thumb-link" href=${toPair(job, here.part.part, here.photo, photo)} aria-label=${nameOf(other)}>
      <span class="thumb"><img src=${photoAddress(photo, 'thumb')} alt="" width="96" height="96" decoding="async"
        loading="lazy" @load=${measure(photo)}>${overlay(photo, markups, 'slice')}</span>
      <span class="thumb-name">${part.label}</span>
    </a>`
}
