// Finds jobs while one types: by customer, machine and engine.
/** @import { JobLine } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { live } from '../vendor/lit-html/directives/live.js'
import { redraw } from '../state.js'
import { words } from '../words.js'

/** So many are overlooked at a glance. */
const HANDFUL = 6

let asked = ''

/** @param {JobLine[]} all */
export const isSearching = (all) => all.length > HANDFUL && asked.trim() !== ''

/** @param {JobLine[]} all */
export function search(all) {
  if (all.length <= HANDFUL) return ''
  const onInput = (/** @type {InputEvent} */ event) => {
    asked = /** @type {HTMLInputElement} */ (event.target).value
    redraw()
  }
  return html`
    <div role="search" class="job-search">
      <label class="field">
        <span class="field-label">${words.jobs.search}</span>
        <input type="search" autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="search"
          .value=${live(asked)} @input=${onInput}>
      </label>
      <p role="status" class="hint">${isSearching(all) ? words.jobs.foundOf(found(all).length, all.length) : ''}</p>
    </div>`
}

/** Those in which every word stands that was typed. @param {JobLine[]} all */
export function found(all) {
  if (!isSearching(all)) return all
  const wanted = plain(asked).split(/\s+/).filter(Boolean)
  return all.filter(({ customer, machine, engine }) => {
    const line = plain([customer, machine, engine ?? words.jobs.noEngine].join(' '))
    return wanted.every((word) => line.includes(word))
  })
}

/** Small letters without accents. @param {string} text */
const plain = (text) => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()
