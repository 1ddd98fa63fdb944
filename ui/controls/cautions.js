// What can hurt, where the hand meets it. Folded away it still says what it is about.
/** @import { Caution, Screen } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { cautionsOn } from '../catalogue.js'
import { words } from '../words.js'

const text = words.cautions

/** Folded away. @param {Caution[]} rows */
export const cautions = (rows) =>
  rows.length === 0 ? '' : html`
    <details class="cautions">
      <summary>${text.about(rows.map(({ about }) => about))}</summary>
      ${cautionLines(rows)}
    </details>`

/** In the open, for what is folded away itself. @param {Caution[]} rows */
export const cautionLines = (rows) =>
  rows.length === 0 ? '' : html`
    <ul class="caution-lines">${rows.map(({ about, line, source }) => html`
      <li><strong>${about}.</strong> ${line} <span class="source">${text.source}: ${source}</span></li>`)}</ul>`

/** Of what is begun on a screen. @param {Screen} screen */
export const screenCautions = (screen) => cautions(cautionsOn(screen))
