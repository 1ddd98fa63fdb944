// The fields of a part on a drawing of it: one tap marks a field, another takes the mark off.
/** @import { Zone, ZoneEntry, ZoneMap } from '../types/api.d.ts' */
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
  const button = (/** @type {ZoneEntry} */ zone) => {
    const { id, label } = zone
    const isMarked = marked.includes(id)
    const name = capitalised(label)
    return html`
      <button type="button" aria-pressed=${isMarked ? 'true' : 'false'}
        class=${`zone zone-at-${id} ${id === pointed
          ? 'zone-pointed'
          : ''} ${isMarked
          ? `zone-grade-${grade ?? 1}`
          : ''}`}
        aria-label=${id === pointed ? words.part.lookAt(name) : name} @click=${() => toggle(id)}>
        <span aria-hidden="true">${table.short(zone)}</span>
      </button>`
  }
  return html`
    <div class="zones" role="group" aria-label=${words.part.where}>
      <p class="zones-lead" aria-hidden="true">${words.part.whereShort}</p>
      <div class=${`zone-drawing zone-${map}`}>
        ${outlines[map] ?? ''}
        ${table.columns.map((column) => html`<span class="zone-column" aria-hidden="true">${column}</span>`)}
        ${all.map(button)}
      </div>
      ${marked.length > 0 && !grade ? html`<p class="hint">${words.part.zonesWait}</p>` : ''}
    </div>`
}

/** The same drawing to look at, with one field pointed out. Its name is said beside it.
 * @param {ZoneMap} map @param {string} pointed */
export function stillZones(map, pointed) {
  const all = zonesOf(map)
  const table = tableOf(all)
  return html`
    <div class=${`zone-drawing zone-drawing-still zone-${map}`} aria-hidden="true">
      ${outlines[map] ?? ''}
      ${table.columns.map((column) => html`<span class="zone-column">${column}</span>`)}
      ${all.map((zone) => html`
        <span class=${`zone zone-at-${zone.id} ${zone.id === pointed ? 'zone-pointed' : ''}`}>
          <span>${table.short(zone)}</span>
        </span>`)}
    </div>`
}

/** Where the fields form a table, the columns are written once above them and the fields carry their row's word.
 * @param {ZoneEntry[]} all */
function tableOf(all) {
  const columns = [...new Set(all.flatMap(({ column }) => column ?? []))]
  return { columns, short: (/** @type {ZoneEntry} */ { row, label }) => row ?? label }
}
