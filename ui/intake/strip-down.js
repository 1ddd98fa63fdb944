// Before anything is opened: what opening costs and what a refusal costs, shown to the customer, and their answer.
/** @import { JobView, OrderedStripDown, StripDownAnswer } from '../types/api.d.ts' */
/** @import { Saying } from '../approval/said-by.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { asSaid, sayingFields, signed, startSaying, unsigned } from '../approval/said-by.js'
import { hasCurrency, shown } from '../amounts.js'
import { choice, optionsOf } from '../controls/choice.js'
import { formOf, hasDraft } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { passage } from '../controls/input.js'
import { readStripDown, stripDownAsTyped, stripDownFields } from '../controls/strip-down-terms.js'
import { table } from '../controls/table.js'
import { day, today } from '../dates.js'
import { append, settled, submit } from '../edits/queue.js'
import { savePaper } from '../papers.js'
import { toShop } from '../route.js'
import { redraw, shownJob, state } from '../state.js'
import { words } from '../words.js'
import { setFold } from './set-fold.js'

const text = words.stripDown

/** What of a job is being made or answered anew. @type {Set<string>} */
const anew = new Set()

/** @param {string} what @param {boolean} isAnew */
function again(what, isAnew) {
  if (isAnew) anew.add(what)
  else anew.delete(what)
  redraw()
}

/** @param {JobView} view */
export function stripDown(view) {
  const { ordered } = view.strip_down
  const isMaking = !ordered || anew.has(`order ${view.job}`) || hasDraft(orderName(view))
  return setFold({
    name: text.title,
    set: standing(view),
    body: html`
      <p class="hint">${text.hint}</p>
      ${isMaking ? order(view) : made(view, ordered)}`,
  })
}

/** How far it is. @param {JobView} view */
function standing(view) {
  const { ordered } = view.strip_down
  if (hasDraft(orderName(view)) || (ordered && hasDraft(answerName(view.job, ordered)))) return words.intake.notSaved
  if (!ordered) return text.none
  if (!ordered.answer) return text.noAnswer
  return ordered.answer.agreed ? text.agreed : text.refused
}

/** @param {JobView} view */
const orderName = ({ job, prices }) => `strip-down ${job} ${prices.currency}`
/** @param {string} job @param {OrderedStripDown} ordered */
const answerName = (job, { edit }) => `answer ${job} ${edit}`

/** @param {JobView} view */
function order(view) {
  const { job, prices, strip_down: { ordered, to_order: offer } } = view
  if (!hasCurrency(prices)) return pricesFirst(view)
  const { currency } = prices
  const earlier = ordered?.order
  const start = () => ({
    ...stripDownAsTyped(earlier?.terms ?? offer.terms, currency),
    oldParts: oldPartsOf(earlier?.old_parts),
    remark: earlier?.remark ?? '',
  })
  const form = formOf(orderName(view), start)
  const { entered, refusal, enter, send, forget } = form
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    const isSaved = await send(async ({ oldParts, remark, ...typed }) => {
      const terms = readStripDown(typed, currency)
      await settled()
      // What follows from the job now, so that nothing is shown that does not.
      const { to_order } = (shownJob() ?? view).strip_down
      const wish = oldParts === 'not-asked' ? {} : { old_parts: oldParts === 'wanted' }
      return submit(job, {
        do: 'order-strip-down',
        order: { ...to_order, terms, ...wish, remark: remark.trim() },
        made: today(),
      })
    })
    if (isSaved) again(`order ${job}`, false)
  }
  return html`
    <form class="entry" aria-label=${text.title} @submit=${save}>
      ${foundDraft(form)}
      ${stripDownFields('strip-down', currency, entered, enter)}
      ${choice({
        name: 'old-parts',
        legend: text.oldParts,
        options: optionsOf(text.oldPartsWish),
        value: entered.oldParts,
        choose: (oldParts) => enter({ oldParts }),
      })}
      ${passage({ label: text.remark, value: entered.remark, enter: (remark) => enter({ remark }) })}
      <p class="hint">${offer.estimate === undefined
        ? text.noEstimate
        : text.estimate(shown(offer.estimate, currency))}</p>
      <p role="alert" class="refusal">${refusal}</p>
      <div class="bar-inline">
        ${ordered
          ? html`<button type="button"
            @click=${() => { forget(); again(`order ${job}`, false) }}>${text.keepOrder}</button>`
          : ''}
        <button class="primary">${text.saveOrder}</button>
      </div>
    </form>`
}

/** Without a currency nothing can cost anything. @param {JobView} view */
function pricesFirst({ job }) {
  const shop = state.shelf.prices
  return html`
    <p>${text.pricesFirst}</p>
    ${shop
      ? html`<button type="button"
        @click=${() => append(job, { do: 'use-prices', prices: shop })}>${words.costs.take}</button>`
      : html`<a class="button" href=${toShop('prices')}>${words.costs.enterShop}</a>`}`
}

/** @param {boolean | undefined} wanted @returns {keyof typeof text.oldPartsWish} */
const oldPartsOf = (wanted) => (wanted === undefined ? 'not-asked' : wanted ? 'wanted' : 'not-wanted')

/** What was shown, and the answer to it. @param {JobView} view @param {OrderedStripDown} ordered */
function made(view, ordered) {
  const { job, strip_down: { lines } } = view
  const { order: { currency, terms }, made, answer } = ordered
  const isAnswering = !answer || anew.has(`answer ${ordered.edit}`) || hasDraft(answerName(job, ordered))
  return html`
    ${made ? html`<p>${text.madeOn(day(made))}</p>` : ''}
    ${table({
      label: text.title,
      heads: Object.values(text.columns),
      rows: lines.map(({ what, sum }) => ({
        head: what,
        cells: sum ? [shown(sum.net, currency), shown(sum.gross, currency)] : [words.costs.noPrice, ''],
      })),
    })}
    ${terms.destroyed ? html`<p>${text.destroyedNow(terms.destroyed)}</p>` : ''}
    ${terms.most_days ? html`<p>${text.withinDays(terms.most_days)}</p>` : ''}
    <div class="hand-over-ways">
      <button type="button" @click=${() => savePaper(job, 'strip-down-order-pdf')}>${text.pdf}</button>
      <button type="button" @click=${() => again(`order ${job}`, true)}>${text.makeAnew}</button>
    </div>
    ${isAnswering ? answerForm(job, ordered) : answered(ordered, answer)}`
}

/** @typedef {Saying & { agreed: 'yes' | 'no' | undefined }} Entered */

/** @param {string} job @param {OrderedStripDown} ordered */
function answerForm(job, ordered) {
  const { edit, answer } = ordered
  /** @returns {Entered} */
  const start = () => ({ ...startSaying(answer), agreed: undefined })
  const form = formOf(answerName(job, ordered), start, unsigned)
  const { entered, refusal, enter, send } = form
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    const isSaved = await send(({ agreed, ...saying }) => {
      if (!agreed) throw new Error(text.answerFirst)
      if (!saying.way) throw new Error(words.approval.howFirst)
      return submit(job, {
        do: 'answer-strip-down',
        answer: { order: edit, agreed: agreed === 'yes', ...asSaid(saying) },
      })
    })
    if (isSaved) again(`answer ${edit}`, false)
  }
  return html`
    <form class="entry" aria-label=${text.answer} @submit=${save}>
      ${foundDraft(form)}
      ${choice({
        name: 'strip-down-agreed',
        legend: text.answer,
        options: optionsOf(text.answers),
        value: entered.agreed,
        choose: (agreed) => enter({ agreed }),
      })}
      ${sayingFields(entered, enter)}
      <p role="alert" class="refusal">${refusal}</p>
      <button class="primary">${words.approval.save}</button>
    </form>`
}

/** @param {OrderedStripDown} ordered @param {StripDownAnswer} answer */
const answered = ({ edit }, answer) => html`
  <p><strong>${answer.agreed ? text.agreed : text.refused}</strong></p>
  ${signed(answer)}
  <button type="button" @click=${() => again(`answer ${edit}`, true)}>${words.approval.again}</button>`
