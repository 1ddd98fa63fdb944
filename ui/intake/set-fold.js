// What is rarely changed, folded away under a line that tells what is set.
import { html } from '../vendor/lit-html/lit-html.js'
import { folded } from '../controls/folded.js'
import { state } from '../state.js'

/** @param {{ name: string, set: string, body: unknown, isOpen?: boolean }} fold */
export const setFold = ({ name, set, body, isOpen }) =>
  folded({
    name: `${state.route.job} intake ${name}`,
    look: 'more',
    summary: html`<span class="folded-line"><span>${name}</span> <span class="folded-set">${set}</span></span>`,
    body,
    isOpen,
  })
