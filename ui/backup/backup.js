// The shop is saved elsewhere, and brought back from there.
/** @import { Backup } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import {
  chooseBackup, forgetBackup, getBackup, makeBackup, restoreBackups, saveShop, shareShop, surroundings,
} from '../backend.js'
import { moment } from '../dates.js'
import { settled } from '../edits/queue.js'
import { underWay } from '../frame/under-way.js'
import { tellTaken } from '../jobs/taking-in.js'
import { leave } from '../papers.js'
import { attempt, redraw, state } from '../state.js'
import { words } from '../words.js'

const text = words.backup

/** @type {Backup | null} */
let shown = null

export async function readBackup() {
  shown = await getBackup()
}

export function backup() {
  return { title: words.screens.backup, body: shown === null ? html`<p>${words.frame.loading}</p>` : body(shown) }
}

/** @param {Backup} backup */
const body = ({ folder, at, failed }) => html`
  <p>${at === null ? text.never : text.last(moment(at))}</p>
  ${failed === null ? '' : html`<p class="notice" role="alert">${text.failed(failed)}</p>`}
  ${surroundings.choosesFolders ? intoFolder(folder) : ''}
  <h2>${text.oneFile}</h2>
  <p class="hint">${text.oneFileHint}</p>
  <div class="hand-over-ways">
    <button type="button" @click=${save}>${text.save}</button>
    ${surroundings.phone.share ? html`<button type="button" @click=${share}>${text.share}</button>` : ''}
  </div>
  <h2>${text.back}</h2>
  <p class="hint">${text.backHint}</p>
  ${surroundings.choosesFolders
    ? html`<div class="hand-over-ways"><button type="button" @click=${restore}>${text.restore}</button></div>`
    : ''}`

/** @param {string | null} folder */
const intoFolder = (folder) => html`
  <h2>${text.folder}</h2>
  ${folder === null
    ? html`
      <p class="hint">${text.folderHint}</p>
      <div class="hand-over-ways"><button type="button" class="primary" @click=${choose}>${text.choose}</button></div>`
    : html`
      <p class="backup-folder">${folder}</p>
      <div class="hand-over-ways">
        <button type="button" class="primary" @click=${make}>${text.make}</button>
        <button type="button" @click=${choose}>${text.another}</button>
        <button type="button" class="quiet" @click=${forget}>${text.forget}</button>
      </div>`}`

const choose = () =>
  attempt(async () => {
    if (!(await chooseBackup())) return
    await readBackup()
    await makeNow()
  })

const make = () => attempt(makeNow)

async function makeNow() {
  await settled()
  try {
    const done = await underWay(makeBackup)
    if (done) state.notice = text.done(done)
  } finally {
    await readBackup()
    redraw()
  }
}

const forget = () =>
  attempt(async () => {
    await forgetBackup()
    await readBackup()
  })

const save = () => leave(async (way) => words.handOver.savedAs(await saveShop(way))).then(readAnew)

const share = () =>
  leave(async (way) => ((await shareShop(way)) ? words.handOver.shared : words.handOver.notShared)).then(readAnew)

const readAnew = () => attempt(readBackup)

const restore = () =>
  attempt(async () => {
    const taken = await underWay(restoreBackups)
    if (taken) tellTaken(taken)
  })
