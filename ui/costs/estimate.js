// What the customer was told before the engine was opened, line by line.
/** @import { Charge, EstimateLine, JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { plain, read, shown } from '../amounts.js'
import { standingWords } from '../catalogue.js'
import { foldAfter } from '../controls/fold.js'
import { forgetDraft, formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input, tick } from '../controls/input.js'
import { keyId, keyWords } from '../controls/price.js'
import { append, submit } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.costs

/** @param {JobView} view */
export function estimate(view) {
  const { estimate: lines, prices } = view
  const sum = lines.reduce((sum, { net }) => sum + net, 0)
  return html`
    ${lines.length === 0 ? html`<p>${text.estimateNone}</p>` : html`
      <ul class="quote">${lines.map((line, place) => entry(view, line, place))}</ul>
      <dl class="totals"><div class="total"><dt>${text.sum}</dt><dd>${shown(sum, prices.currency)}</dd></div></dl>`}
    <details>
      <summary>${text.addLine}</summary>
      ${lineForm(view, undefined, lines.length)}
    </details>`
}

/** By what a line is told from another while it is being changed: its place moves when another is dropped.
 * @param {EstimateLine[]} lines @param {number} place */
export const estimateLineId = (lines, place) => {
  const what = lines[place]?.what ?? ''
  return `${what} ${lines.slice(0, place).filter((line) => line.what === what).length}`
}

/** @param {JobView} view @param {EstimateLine} line @param {number} place */
function entry(view, line, place) {
  const drop = async () => {
    const name = formName(view, place)
    if (await append(view.job, { do: 'note-estimate', lines: replaced(view.estimate, place) })) forgetDraft(name)
  }
  return html`
    <li class="quote-line">
      <div class="quote-head">
        <h2>${line.what}</h2>
        <p class="amount"><strong>${shown(line.net, view.prices.currency)}</strong></p>
      </div>
      <p class="hint">${line.of.length === 0
        ? text.standsForNothing
        : text.standsFor(line.of.map((of) => chargeWords(view, of)).join('; '))}</p>
      <details>
        <summary aria-label=${text.changeLineOf(line.what)}>${text.changeLine}</summary>
        ${lineForm(view, line, place)}
        <button type="button" class="quiet" aria-label=${text.dropLineOf(line.what)}
          @click=${drop}>${text.dropLine}</button>
      </details>
    </li>`
}

/** Of a new line, at the place after the last. @param {JobView} view @param {number} place */
const formName = ({ job, estimate }, place) =>
  `estimate ${job} ${place < estimate.length ? estimateLineId(estimate, place) : 'new'}`

/** @param {JobView} view @param {EstimateLine | undefined} line @param {number} place */
function lineForm(view, line, place) {
  const { job, prices: { currency } } = view
  const form = formOf(formName(view, place), () => ({
    what: line?.what ?? '',
    net: line ? plain(line.net, currency) : '',
    of: (line?.of ?? []).map(keyId),
  }))
  const { entered, refusal, enter, send } = form
  const keys = keysOf(view, line)
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return foldAfter(event, send(({ what, net, of }) => {
      if (!what.trim()) throw new Error(text.lineEmpty)
      const noted = { what: what.trim(), net: read(net, currency), of: keys.filter((key) => of.includes(keyId(key))) }
      return submit(job, { do: 'note-estimate', lines: replaced(view.estimate, place, noted) })
    }))
  }
  /** @param {string} id @param {boolean} isIn */
  const stand = (id, isIn) => enter({ of: isIn ? [...entered.of, id] : entered.of.filter((other) => other !== id) })
  const id = `estimate-${line ? place : 'new'}`
  return html`
    <form class="entry" aria-label=${line ? text.changeLineOf(line.what) : text.addLine} @submit=${save}>
      ${foundDraft(form)}
      <div class="pair">
        ${input({ id: `${id}-what`, label: text.lineWhat, value: entered.what, enter: (what) => enter({ what }) })}
        ${input({
          id: `${id}-net`,
          label: text.lineNet(currency),
          value: entered.net,
          kind: 'amount',
          enter: (net) => enter({ net }),
        })}
      </div>
      <fieldset class="stands-for">
        <legend>${text.lineOf}</legend>
        <p class="hint">${text.lineOfHint}</p>
        ${keys.map((key) =>
          tick({
            label: chargeWords(view, key),
            checked: entered.of.includes(keyId(key)),
            enter: (isIn) => stand(keyId(key), isIn),
          }))}
      </fieldset>
      <p role="alert" class="refusal">${refusal}</p>
      <button>${text.saveLine}</button>
    </form>`
}

/** What a line can stand for, in words. @param {JobView} view @param {Charge} of */
const chargeWords = ({ assessment }, of) =>
  'kind' in of
    ? keyWords(of)
    : 'standing' in of
      ? standingWords(of.standing)
      : assessment.quote.lines.find((line) => keyId(line.of) === keyId(of))?.what ?? text.ownItem

/** The lines with the one at this place replaced, or taken off.
 * @param {EstimateLine[]} lines @param {number} place @param {EstimateLine[]} now */
const replaced = (lines, place, ...now) => [...lines.slice(0, place), ...now, ...lines.slice(place + 1)]

/** What a line can stand for: what the quote has now, what has a price, and what the line has stood for till now.
 * @param {JobView} view @param {EstimateLine | undefined} line @returns {Charge[]} */
function keysOf({ assessment, prices }, line) {
  const standing = (prices.standing ?? []).map(({ of }) => ({ standing: of }))
  const priced = [...prices.prices.map(({ of }) => of), ...standing]
  const all = [...assessment.quote.lines.map(({ of }) => of), ...priced, ...(line?.of ?? [])]
  return [...new Map(all.map((key) => [keyId(key), key])).values()]
}
