// Where more than one way serves, all stand side by side: what each costs, which is recommended, which the plan
// follows.
/** @import { JobView, Way, Ways, Work } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { shown } from '../amounts.js'
import { choice } from '../controls/choice.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { submit } from '../edits/queue.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.costs

/** @param {JobView} view @param {Ways} ways */
export const ways = (view, ways) => html`
  <ul class="ways">${ways.ways.map((way, place) => one(view, ways, way, place === 0))}</ul>
  ${ways.unpriced ? html`<p class="hint">${text.unpriced}</p>` : ''}
  ${choose(view.job, ways)}`

/** @param {JobView} view @param {Ways} ways @param {Way} way @param {boolean} isFirst */
function one({ prices }, { followed, because, chosen_because }, way, isFirst) {
  const isFollowed = way.work === followed
  return html`
    <li class=${isFollowed ? 'way way-followed' : 'way'}>
      ${isFirst || isFollowed
        ? html`<p class="way-flag">${[
          isFirst ? text.recommended : '',
          isFollowed ? text.followed : '',
        ].filter(Boolean).join(' · ')}</p>`
        : ''}
      <p>${capitalised(way.words)}</p>
      ${way.ruled_out
        ? html`<p class="hint"><strong>${text.ruledOut}.</strong> ${way.ruled_out}</p>`
        : html`<p class="amount">${way.net === null
          ? html`<span class="no-price">${text.noPrice}</span>`
          : html`<strong>${shown(way.net, prices.currency)}</strong>`}</p>`}
      ${isFirst ? html`<p class="hint">${because}</p>` : ''}
      ${way.mind ? html`<p class="hint">${way.mind}</p>` : ''}
      ${isFollowed && chosen_because !== null ? html`<p>${text.wayChosen(chosen_because)}</p>` : ''}
    </li>`
}

/** @param {string} job @param {Ways} ways */
function choose(job, { kind, what, ways, followed, chosen_because }) {
  /** @type {Work | ''} */
  const chosen = chosen_because === null ? '' : followed
  const form = formOf(
    `way ${job} ${kind}`,
    () => ({ way: chosen, reason: chosen_because ?? '' }),
  )
  const { entered, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(
      event,
      send(({ way, reason }) => submit(job, { do: 'choose-way', kind, way: way || null, reason: way ? reason : '' })),
    )
  }
  const possible = ways.filter(({ ruled_out }) => ruled_out === '')
  return html`
    <details>
      <summary aria-label=${text.chooseWayFor(what)}>${text.chooseWay}</summary>
      <form class="entry" aria-label=${text.chooseWayFor(what)} @submit=${save}>
        ${foundDraft(form)}
        ${choice({
          name: `way-${kind}`,
          legend: text.way,
          options: [
            { value: /** @type {Work | ''} */ (''), label: text.planned },
            ...possible.map(({ work, words }) => ({ value: work, label: capitalised(words) })),
          ],
          value: entered.way,
          choose: (way) => enter({ way }),
        })}
        ${entered.way === ''
          ? ''
          : input({
            id: `way-${kind}-reason`,
            label: text.wayReason,
            value: entered.reason,
            enterKey: 'done',
            enter: (reason) => enter({ reason }),
          })}
        <p role="alert" class="refusal">${refusal}</p>
        <button>${text.saveWay}</button>
      </form>
    </details>`
}
