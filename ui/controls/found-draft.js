// A word on what was entered before the page was ended and is not saved, and the way to drop it.
import { html } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'

/** @param {{ isFound: boolean, forget: () => void }} form */
export const foundDraft = ({ isFound, forget }) =>
  isFound
    ? html`<div class="found-draft">
      <p>${words.controls.found}</p>
      <button type="button" class="quiet" @click=${forget}>${words.controls.dropFound}</button>
    </div>`
    : ''
