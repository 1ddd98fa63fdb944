// The shelf of spec sheets: kept from job to job, taken down into a job, carried to another device as a file.
/** @import { JobView, Sheet } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { dropSheet, importSheet, keepSheet, saveSheet } from '../backend.js'
import { fileButton } from '../controls/file-button.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { append, settled } from '../edits/queue.js'
import { swap, toScreen } from '../route.js'
import { attempt, shownJob, state } from '../state.js'
import { words } from '../words.js'

const text = words.sheet

/** @param {JobView} view */
export function shelf(view) {
  const { sheets } = state.shelf
  return {
    title: text.shelf,
    body: html`
      <p>${text.shelfIntro}</p>
      ${sheets.length === 0
        ? html`<p>${text.shelfEmpty}</p>`
        : html`<ul class="rows">${sheets.map((sheet) => kept(view, sheet))}</ul>`}
      ${keeping(view)}`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toScreen(view.job, 'sheet')}>${text.toSheet}</a>
        ${fileButton({ label: text.importSheet, accept: '.json,application/json', take: takeIn })}
      </div>`,
  }
}

/** @param {JobView} view @param {Sheet} sheet */
function kept({ job, sheet: current }, sheet) {
  const { name, source } = sheet.head
  const use = async () => {
    if (await append(job, { do: 'use-sheet', sheet })) swap(toScreen(job, 'sheet'))
  }
  const drop = async () => {
    // The button goes with the sheet, so the keyboard goes back to the head.
    if (await putOnShelf(() => dropSheet(name))) document.querySelector('h1')?.focus()
  }
  const isReplacing = current.lines.length + current.undersizes.length + current.oversizes.length > 0
  return html`
    <li class="kept">
      <p class="row-name">${name}</p>
      <p class="row-facts">${[
        source,
        text.counted(sheet.lines.length, sheet.undersizes.length + sheet.oversizes.length),
      ].filter(Boolean).join('; ')}</p>
      ${isReplacing ? html`<p class="hint">${text.replaces}</p>` : ''}
      <div class="bar-inline">
        <button type="button" class="primary" aria-label=${text.useNamed(name)} @click=${use}>${text.use}</button>
        <button type="button" aria-label=${text.exportNamed(name)}
          @click=${() =>
            attempt(async () =>
              { state.notice = words.handOver.savedAs(await saveSheet(name)) })}>${text.export}</button>
      </div>
      <details class="drop">
        <summary aria-label=${text.dropFor(name)}>${text.dropSheet}</summary>
        <p>${text.droppingSheet}</p>
        <button type="button" @click=${drop}>${text.dropNamed(name)}</button>
      </details>
    </li>`
}

/** @param {JobView} view */
function keeping({ job, sheet }) {
  const form = formOf(`sheet-copy ${job}`, () => ({ name: sheet.head.name }))
  const { entered, refusal, enter, send } = form
  const name = entered.name.trim()
  const keep = (/** @type {Event} */ event) => {
    event.preventDefault()
    return send(async () => {
      await settled()
      const latest = shownJob()?.sheet ?? sheet
      state.shelf = await keepSheet({ ...latest, head: { ...latest.head, name } })
      state.notice = text.keptAs(name)
    })
  }
  const isThere = state.shelf.sheets.some(({ head }) => head.name.trim() === name)
  return html`
    <form class="entry" aria-labelledby="keep-sheet" @submit=${keep}>
      <h2 id="keep-sheet">${text.keep}</h2>
      ${foundDraft(form)}
      ${input({
        id: 'copy-name',
        label: text.keepName,
        value: entered.name,
        hint: text.keepHint,
        enterKey: 'done',
        enter: (name) => enter({ name }),
      })}
      <p role="alert" class="refusal">${refusal}</p>
      <button ?disabled=${name === ''}>${isThere ? text.keepInstead(name) : text.keepNow}</button>
    </form>`
}

/** @param {File[]} files */
const takeIn = ([file]) => file && putOnShelf(() => importSheet(file))

/** @param {() => Promise<typeof state.shelf>} change */
const putOnShelf = (change) =>
  attempt(async () => {
    state.shelf = await change()
    state.notice = words.frame.saved
  })
