// The rebuild beside another engine: what one costs is entered here, and asked for where the rebuild may cost more.
/** @import { EngineBeside, JobView, OtherEngine, PartState } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { read, shown } from '../amounts.js'
import { catalogue, choicesOf, partStateWords } from '../catalogue.js'
import { choice } from '../controls/choice.js'
import { foldAfter } from '../controls/fold.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { append, submit } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.costs

/** @param {JobView} view */
export function otherEngines(view) {
  const { assessment: { other_engines: { engines, verdict, ask } } } = view
  return html`
    ${ask ? html`<p class="notice">${ask}</p>` : ''}
    ${verdict ? html`<p><strong>${verdict}</strong></p>` : ''}
    ${engines.length === 0
      ? ''
      : html`<ul class="quote">${engines.map((engine, place) => entry(view, engine, place))}</ul>`}
    <details>
      <summary>${text.addEngine}</summary>
      ${addEngine(view)}
    </details>`
}

/** @param {JobView} view @param {EngineBeside} engine @param {number} place */
function entry(view, { what, state, net, gross, words: difference }, place) {
  const { currency } = view.prices
  const drop = () =>
    append(view.job, { do: 'note-other-engines', engines: entered(view).filter((_, other) => other !== place) })
  return html`
    <li class="quote-line">
      <div class="quote-head">
        <h2>${what} (${partStateWords(state)})</h2>
        <p class="amount"><strong>${shown(gross, currency)}</strong></p>
      </div>
      <p class="hint">${text.engineNet(shown(net, currency))}</p>
      <p>${difference}</p>
      <button type="button" class="quiet" aria-label=${text.dropLineOf(what)} @click=${drop}>${text.dropLine}</button>
    </li>`
}

/** @param {JobView} view */
function addEngine(view) {
  const { job, prices: { currency } } = view
  const name = `other-engine ${job}`
  const start = () => ({ what: '', state: /** @type {PartState} */ ('new'), net: '' })
  const form = formOf(name, start)
  const { entered: typed, refusal, enter, send } = form
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, send(({ what, state, net }) => {
      const engine = { what: what.trim(), state, net: read(net, currency) }
      return submit(job, { do: 'note-other-engines', engines: [...entered(view), engine] })
    }))
  }
  return html`
    <form class="entry" aria-label=${text.addEngine} @submit=${save}>
      ${foundDraft(form)}
      <p class="hint">${text.engineHint}</p>
      <div class="pair">
        ${input({ id: 'engine-what', label: text.engineWhat, value: typed.what, enter: (what) => enter({ what }) })}
        ${input({
          id: 'engine-net',
          label: text.lineNet(currency),
          value: typed.net,
          kind: 'amount',
          enter: (net) => enter({ net }),
        })}
      </div>
      ${choice({
        name: 'engine-state',
        legend: text.engineState,
        options: choicesOf(catalogue().part_states),
        value: typed.state,
        choose: (state) => enter({ state }),
      })}
      <p role="alert" class="refusal">${refusal}</p>
      <button>${text.saveEngine}</button>
    </form>`
}

/** What has been entered, in the order in which it is shown. @param {JobView} view @returns {OtherEngine[]} */
const entered = ({ assessment }) =>
  assessment.other_engines.engines.map(({ what, state, net }) => ({ what, state, net }))
