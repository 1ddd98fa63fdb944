// The lists that are worked: all of them with how far they are, and one with its items.
/** @import { JobView, ListItem, WorkList } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { catalogue } from '../catalogue.js'
import { folded } from '../controls/folded.js'
import { excess } from '../costs/excess.js'
import { toScreen } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { item, progress } from './item.js'
import { itemKey } from './key.js'
import { ownItem } from './own-item.js'
import { papers } from './papers.js'
import { toCauses } from './why.js'

const text = words.lists

/** @param {JobView} view */
export function lists(view) {
  const all = view.assessment.lists
  if (view.assessment.parts.length === 0) {
    return {
      title: words.screens.lists,
      body: html`<p>${text.noEngine}</p><a class="button"
        href=${toScreen(view.job, 'intake', 'engine')}>${words.marks.toIntake}</a>`,
    }
  }
  const asked = all.findIndex(({ kind }) => kind === state.route.subject)
  const open = asked < 0 && state.wide ? all.findIndex(({ items, done }) => done < items.length) : asked
  const list = all[open]
  const beside = { title: words.screens.lists, body: overview(view, list) }
  if (!list) return beside
  const shown = { ...one(view, list, all[open + 1]), beside }
  // Where nothing was chosen, nothing leads on from it.
  return asked < 0 ? { ...shown, bar: '' } : shown
}

/** @param {JobView} view @param {WorkList | undefined} open */
const overview = ({ job, assessment }, open) => html`
  <p>${text.intro}</p>
  ${excess(assessment)}
  <ol class="rows">${assessment.lists.map((list) => line(job, list, list === open))}</ol>`

/** @param {string} job @param {WorkList} list @param {boolean} isOpen */
function line(job, { kind, title, items, done }, isOpen) {
  const held = items.filter(({ waits_for }) => waits_for.length > 0).length
  return html`
    <li>
      <a class="row" href=${toScreen(job, 'lists', kind)} aria-current=${isOpen ? 'true' : 'false'}>
        <span class="row-name">${title}</span>
        <span>${text.done(done, items.length)}</span>
        ${held > 0 ? html`<span class="held-flag">${text.held(held)}</span>` : ''}
      </a>
    </li>`
}

/** @param {JobView} view @param {WorkList} list @param {ListItem[]} items @param {boolean} [isWhySaid] */
const itemsOf = (view, { kind }, items, isWhySaid = false) => html`
  <ul class="work-list">${repeat(items, itemKey, (entry) => item(view, entry, kind === 'order', isWhySaid))}</ul>`

/** So many lines fill the screens that a person looks through at once. */
const FOREMOST = 5

/** @param {JobView} view @param {WorkList} list @param {ListItem[]} items */
function inOrder(view, list, items) {
  // A fold for one or two would save nothing.
  const rest = items.length > FOREMOST + 2 ? items.slice(FOREMOST) : []
  return html`
    ${itemsOf(view, list, items.slice(0, items.length - rest.length))}
    ${rest.length === 0 ? '' : folded({
      name: `${view.job} ${list.kind} rest`,
      summary: html`${text.moreLines(rest.length)}
        <span class="fold-facts">${rest.slice(0, 3).map(({ what }) => what).join(', ')} …</span>`,
      body: () => itemsOf(view, list, rest),
    })}`
}

/** What waits for the same stands together, and what it waits for is said once. @param {JobView} view
 * @param {WorkList} list @param {ListItem[]} items */
const held = (view, list, items) => together(items, ({ waits_for }) => waits_for[0] ?? '').map(([reason, same]) => html`
  <p class="held"><span class="held-flag">${text.heldFlag}</span> ${reason}</p>
  ${itemsOf(view, list, same)}`)

/** What one cause asks for stands together, folded but for the first. @param {JobView} view @param {WorkList} list
 * @param {ListItem[]} items */
const byCause = (view, list, items) => together(items, ({ because }) => because).map(([because, same], nth) => folded({
  name: `${view.job} ${list.kind} ${because}`,
  isOpen: nth === 0,
  summary: html`
    <span class="fold-name">${because}</span>
    <span class="fold-facts">${text.done(same.filter(isTicked).length, same.length)}</span>`,
  body: () => html`${itemsOf(view, list, same, true)}${toCauses(view.job)}`,
}))

/** @param {ListItem} item */
const isTicked = ({ tick, quantity }) => !!tick && tick.done >= quantity

/** @param {ListItem[]} items @param {(item: ListItem) => string} by @returns {[string, ListItem[]][]} */
function together(items, by) {
  /** @type {Map<string, ListItem[]>} */
  const groups = new Map()
  for (const own of items) groups.set(by(own), [...(groups.get(by(own)) ?? []), own])
  return [...groups]
}

/** What came back, was measured and is right. @param {JobView} view @param {WorkList} list */
function behind(view, list) {
  const items = list.items.filter(({ is_right }) => is_right)
  if (items.length === 0) return ''
  return html`
    <details class="more">
      <summary>${text.behind(items.length)}</summary>
      ${itemsOf(view, list, items)}
    </details>`
}

/** What was done about items that no longer follow from the job. @param {WorkList} list */
function notWanted({ not_wanted }) {
  if (not_wanted.length === 0) return ''
  return html`
    <h2>${text.notWanted}</h2>
    <ul class="work-list">${not_wanted.map(({ asked, words: what, because, tick }) => html`
      <li class="item">
        <p><strong>${what}</strong></p>
        <p>${because}</p>
        <p class="item-state">${progress(asked, tick)}</p>
      </li>`)}</ul>`
}

/** @param {JobView} view @param {WorkList} list @param {WorkList | undefined} next */
function one(view, list, next) {
  const todo = list.items.filter(({ is_right }) => !is_right)
  const free = todo.filter(({ waits_for }) => waits_for.length === 0)
  return {
    title: list.title,
    paper: { document: /** @type {const} */ ('list-pdf'), selection: { list: list.kind } },
    body: html`
      ${excess(view.assessment)}
      <p class="list-progress">${list.items.length === 0
        ? list.note || text.empty
        : text.done(list.done, list.items.length)}</p>
      ${list.items.some(({ hands }) => hands) ? html`<p class="hint">${catalogue().governs}</p>` : ''}
      ${list.kind === 'put-right' ? byCause(view, list, free) : inOrder(view, list, free)}
      ${held(view, list, todo.filter(({ waits_for }) => waits_for.length > 0))}
      ${behind(view, list)}
      ${notWanted(list)}
      ${ownItem(view.job, list.kind)}
      ${papers(view.job, list)}`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toScreen(view.job, 'lists')}>${text.all}</a>
        ${next
          ? html`<a class="button" href=${toScreen(view.job, 'lists', next.kind)}>${text.next(next.title)}</a>`
          : ''}
      </div>`,
  }
}
