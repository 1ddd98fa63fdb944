// The fields of a part on a drawing of it: one tap marks a field, another takes the mark off.
/** @import { Zone, ZoneMap } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { zonesOf } from '../catalogue.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { outlines } from './outlines.js'

/**
 * @param {object} drawing
 * @param {ZoneMap} drawing.map
 * @param {number | null} drawing.grade the hatching of marked fields
 * @param {Zone[]} drawing.marked
 * @param {string} drawing.pointed the field that would settle most; empty if none does
 * @param {(zone: Zone) => void} drawing.toggle
 */
export function zones({ map, grade, marked, pointed, toggle }) {
  const all = zonesOf(map)
  if (all.length === 0) return ''
  const table = tableOf(all)
  return html`
    <div class="zones" role="group" aria-label=${words.part.where}>
      <p class="zones-lead" aria-hidden="true">${words.part.where}</p>
      <div class=${`zone-drawing zone-${map}`}>
        ${outlines[map] ?? ''}
        ${table.columns.map((column) => html`<span class="zone-column" aria-hidden="true">${column}</span>`)}
        ${all.map(({ id, label }) => html`
          <button type="button" class=${`zone zone-at-${id} ${id === pointed ? 'zone-pointed' : ''} ${marked.includes(id) ? `zone-grade-${grade ?? 1}` : ''}`}
            aria-pressed=${marked.includes(id) ? 'true' : 'false'} aria-label=${id === pointed ? words.part.lookAt(capitalised(label)) : capitalised(label)} @click=${() => toggle(id)}>
            <span aria-hidden="true">${table.short(label)}</span>
          </button>`)}
      </div>
      ${marked.length > 0 && !grade ? html`<p class="hint">${words.part.zonesWait}</p>` : ''}
    </div>`
}

/** The same drawing to look at, with one field pointed out. Its name is said beside it. @param {ZoneMap} map @param {string} pointed */
export function stillZones(map, pointed) {
  const all = zonesOf(map)
  const table = tableOf(all)
  return html`
    <div class=${`zone-drawing zone-drawing-still zone-${map}`} aria-hidden="true">
      ${outlines[map] ?? ''}
      ${table.columns.map((column) => html`<span class="zone-column">${column}</span>`)}
      ${all.map(({ id, label }) => html`
        <span class=${`zone zone-at-${id} ${id === pointed ? 'zone-pointed' : ''}`}><span>${table.short(label)}</span></span>`)}
    </div>`
}

/** Where labels read “row, column”, the columns are written once above them and the fields carry their row's word.
 * @param {{ label: string }[]} all */
function tableOf(all) {
  const pairs = all.map(({ label }) => label.split(', '))
  const inTable = pairs.filter((pair) => pair.length === 2)
  if (inTable.length < 9) return { columns: [], short: (/** @type {string} */ label) => label }
  const columns = [...new Set(inTable.map(([, column]) => column ?? ''))]
  return { columns, short: (/** @type {string} */ label) => label.split(', ')[0] ?? label }
}
