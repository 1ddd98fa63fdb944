// The lists that are worked: all of them with how far they are, and one with its items.
/** @import { JobView, ListItem, WorkList } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { catalogue } from '../catalogue.js'
import { excess } from '../costs/excess.js'
import { toScreen } from '../route.js'
import { state } from '../state.js'
import { words } from '../words.js'
import { item, progress } from './item.js'
import { itemKey } from './key.js'
import { ownItem } from './own-item.js'
import { papers } from './papers.js'

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
  const open = all.findIndex(({ kind }) => kind === state.route.subject)
  const list = all[open]
  return list ? one(view, list, all[open + 1]) : overview(view)
}

/** @param {JobView} view */
const overview = ({ job, assessment }) => ({
  title: words.screens.lists,
  body: html`
    <p>${text.intro}</p>
    ${excess(assessment)}
    <ol class="rows">${assessment.lists.map((list) => line(job, list))}</ol>`,
})

/** @param {string} job @param {WorkList} list */
function line(job, { kind, title, items, done }) {
  const held = items.filter(({ waits_for }) => waits_for.length > 0).length
  return html`
    <li>
      <a class="row" href=${toScreen(job, 'lists', kind)}>
        <span class="row-name">${title}</span>
        <span>${text.done(done, items.length)}</span>
        ${held > 0 ? html`<span class="held-flag">${text.held(held)}</span>` : ''}
      </a>
    </li>`
}

/** @param {JobView} view @param {WorkList} list @param {ListItem[]} items */
const itemsOf = (view, { kind }, items) =>
  html`<ul class="work-list">${repeat(items, itemKey, (entry) => item(view, entry, kind === 'order'))}</ul>`

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
const one = (view, list, next) => ({
  title: list.title,
  body: html`
    ${excess(view.assessment)}
    <p class="list-progress">${list.items.length === 0
      ? list.note || text.empty
      : text.done(list.done, list.items.length)}</p>
    ${list.items.some(({ hands }) => hands) ? html`<p class="hint">${catalogue().governs}</p>` : ''}
    ${itemsOf(view, list, list.items.filter(({ is_right }) => !is_right))}
    ${behind(view, list)}
    ${notWanted(list)}
    ${ownItem(view.job, list.kind)}
    ${papers(view.job, list)}`,
  bar: html`
    <div class="bar">
      <a class="button" href=${toScreen(view.job, 'lists')}>${text.all}</a>
      ${next ? html`<a class="button" href=${toScreen(view.job, 'lists', next.kind)}>${text.next(next.title)}</a>` : ''}
    </div>`,
})
