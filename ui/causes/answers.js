// The customer's complaints, each answered, and how the named causes came about: from the way in to what was noticed.
/** @import { CauseView, ComplaintAnswer, JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { folded } from '../controls/folded.js'
import { toPart, toScreen } from '../route.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'
import { foldedLinks, labelsOf, links } from './evidence.js'

const text = words.causes

/** @param {JobView} view @param {ComplaintAnswer[]} all */
export const answers = (view, all) => all.length === 0 ? '' : html`
  <section aria-labelledby="answers">
    <h2 id="answers">${text.answers}</h2>
    <ul class="answers">${all.map(({ told, words: how, answered, before, made_by, after }) => html`
      <li class=${`answer answer-${answered}`}>
        <p><strong>${told}</strong> <span class="answer-mark">${how}</span></p>
        ${before ? html`<p>${before}</p>` : ''}
        ${made_by.map(({ words: by, parts }) => html`
          <p>${capitalised(by)}</p>
          ${foldedLinks((part) => toPart(view.job, part), parts, labelsOf(view))}`)}
        ${after ? html`<p>${after}</p>` : ''}
      </li>`)}</ul>
  </section>`

/** Ways in named in a chain. */
const WAYS = 2

/** A chain of boxes, one under the other, an arrow between. @param {JobView} view @param {CauseView} cause
 * @param {string} [where] it stands: on each screen its folds are folded by themselves */
export function chain({ job }, { id, chain }, where = 'cause') {
  const { ways, has_way_in, damage, complaints, ask, look, look_labels } = chain
  const steps = [
    ...(has_way_in
      ? [{ head: text.wayIn, body: capitalised(waysInWords(ways)) || text.wayInOpen, isOpen: ways.length === 0 }]
      : []),
    { head: text.chainCause, body: capitalised(chain.cause), isOpen: false },
    ...(damage.length > 0 ? [{ head: text.damage, body: damage.map(capitalised).join('. '), isOpen: false }] : []),
    ...(complaints.length > 0 ? [{ head: text.noticed, body: complaints.join('. '), isOpen: false }] : []),
  ]
  return html`
    <ol class="chain">${steps.map(({ head, body, isOpen }) => html`
      <li class=${isOpen ? 'chain-open' : ''}><span class="chain-head">${head}</span> ${body}</li>`)}</ol>
    ${look.length + ask.length === 0
      ? ''
      : lookFor(job, `${where} ${id}`, look, new Map(look.map((part, nth) => [part, look_labels[nth] ?? part])), ask)}`
}

/** Those left out stand under what is put right. @param {string[]} ways */
const waysInWords = (ways) =>
  [...ways.slice(0, WAYS), ...(ways.length > WAYS ? [text.more(ways.length - WAYS)] : [])].join('; ')

/** What was not looked at or asked and would tell how the damage got in.
 * @param {string} job @param {string} name @param {string[]} look @param {Map<string, string>} labels
 * @param {string[]} ask */
const lookFor = (job, name, look, labels, ask) => folded({
  name: `${job} way in ${name}`,
  summary: text.lookForWayIn(look.length, ask.length),
  body: html`
    ${links((part) => toPart(job, part), look, labels)}
    ${ask.map((question) => html`<p>${text.askForWayIn(question)}</p>`)}`,
})

/** The chains of the causes that are named, folded. @param {JobView} view @param {CauseView[]} causes */
export const chains = (view, causes) => causes.filter(({ named }) => named).map((cause) => folded({
  name: `${view.job} chain ${cause.id}`,
  summary: text.chainOf(cause.name),
  body: html`
    ${chain(view, cause, 'list')}
    <p><a class="button" href=${toScreen(view.job, 'causes', cause.id)}>${text.reasons(cause.name)}</a></p>`,
}))
