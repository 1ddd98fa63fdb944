// Where the law of the place asks for it: the work costs more than the customer agreed to.
/** @import { Assessment } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'

/** @param {Assessment} assessment */
export const excess = ({ excess }) => (excess ? html`<p class="notice">${excess.words}</p>` : '')
