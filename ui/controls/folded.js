// What is rarely changed, folded away under a line that tells what is set.
import { html } from '../vendor/lit-html/lit-html.js'

/** @param {{ name: string, set: string, body: unknown, isOpen?: boolean }} fold open only as it is first drawn */
export const folded = ({ name, set, body, isOpen = false }) => html`
  <details class="more folded" ?open=${isOpen}>
    <summary @click=${bringIntoSight}>
      <span class="folded-line"><span>${name}</span> <span class="folded-set">${set}</span></span>
    </summary>
    ${body}
  </details>`

/** At the foot of the screen what is unfolded would else stay out of sight. @param {Event} event */
function bringIntoSight({ currentTarget }) {
  const details = /** @type {Element} */ (currentTarget).closest('details')
  requestAnimationFrame(() => details?.open && details.scrollIntoView({ block: 'nearest' }))
}
