// The rules by which parts are decided: each with its reason and where it comes from.
import { html } from '../vendor/lit-html/lit-html.js'
import { catalogue } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.rules

/** A rule's written form names parts as one half of the trade does. @param {string} name */
const inOurTerms = (name) =>
  catalogue().terms.reduce(
    (said, { id, british, american }) =>
      state.settings.terms[id] === 'american' ? said.replaceAll(british, american) : said.replaceAll(american, british),
    name,
  )

export const rules = () => ({
  title: words.screens.rules,
  body: html`
    <p>${text.intro}</p>
    <ol class="rules">
      ${catalogue().rules.map(({ id, why, source }) => html`
        <li>${folded({
          name: `rule ${id}`,
          isOpen: state.wide,
          summary: html`<span class="fold-name">${capitalised(inOurTerms(id.replaceAll('-', ' ')))}</span>`,
          body: html`
            <p>${why}</p>
            <p class="source">${text.source}: ${source}</p>`,
        })}</li>`)}
    </ol>`,
  bar: state.cameFrom
    ? html`<div class="bar"><a class="button" href=${state.cameFrom}>${words.frame.backToJob}</a></div>`
    : '',
})
