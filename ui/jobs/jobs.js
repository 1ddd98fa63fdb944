// The engines on the bench.
/** @import { JobLine, JobList, Lines, Waiting } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { repeat } from '../vendor/lit-html/directives/repeat.js'
import { createJob, listJobs, makeDemo } from '../backend.js'
import { fileButton } from '../controls/file-button.js'
import { day, dayOf, moment } from '../dates.js'
import { underWay } from '../frame/under-way.js'
import { go, toScreen, toShop } from '../route.js'
import { allShots } from '../shots/shots.js'
import { attempt, state } from '../state.js'
import { words } from '../words.js'
import { away, isAnyAway, readAway } from './away.js'
import { recovered } from './recovered.js'
import { search } from './search.js'
import { askedBack, openArchives } from './taking-in.js'

/** So many are shown at once, and so many more each time. */
const AT_ONCE = 12

/** As they were read last. @type {JobList | null} */
let shown = null
/** How many there are, found or not. */
let all = 0
let asked = ''
let most = AT_ONCE
/** Whether those that are closed are looked at. */
let withFinished = false

export async function readJobs() {
  const wanted = asked
  const [list] = await Promise.all([
    listJobs({ find: wanted, finished: withFinished || wanted.trim() !== '', most }),
    readAway(),
  ])
  // While this was read more may have been typed.
  if (wanted !== asked) return
  shown = list
  if (!wanted.trim()) all = list.open.found + list.finished.found
}

/** @param {string} typed */
function ask(typed) {
  asked = typed
  most = AT_ONCE
  attempt(readJobs)
}

const askMore = () => {
  most += AT_ONCE
  attempt(readJobs)
}

export function jobs() {
  return {
    title: words.screens.jobs,
    body: html`
      ${allShots()}
      ${askedBack()}
      ${shown === null ? '' : troubles(shown)}
      ${shown === null
        ? html`<p>${state.alert ? '' : words.frame.loading}</p>`
        : all === 0
          ? isAnyAway() ? html`<p>${words.jobs.allFinished}</p>` : welcome()
          : html`${search({ all, found: shown.open.found + shown.finished.found, asked, ask })}${onBench(shown)}`}
      ${away()}`,
    bar: html`
      <div class="bar">
        ${all > 0 ? html`<a class="button" href=${toShop('label')}>${words.screens.label}</a>` : ''}
        ${fileButton({ label: words.jobs.importFile, accept: '.wearbook', multiple: true, take: openArchives })}
        <button type="button" class="primary" @click=${newJob}>${words.jobs.create}</button>
      </div>`,
  }
}

/** What is wrong with the device or was with its records. @param {JobList} list */
const troubles = ({ recovery, clock_back, backup_due, backup_failed }) => html`
  ${backup_due === null && backup_failed === null ? '' : html`
    <p class="notice">
      ${backup_failed === null ? words.jobs.backupDue(daysSince(Number(backup_due))) : words.jobs.backupFailed}
      <a href=${toShop('backup')}>${words.jobs.toBackup}</a>
    </p>`}
  ${clock_back === null ? '' : html`<p class="notice">${words.jobs.clockBack(day(dayOf(clock_back)))}</p>`}
  ${recovery === null ? '' : recovered(recovery)}`

/** What is on the bench; what is finished is put away below it, but not what was asked for. @param {JobList} list */
function onBench({ open, finished }) {
  const isAsked = asked.trim() !== ''
  return html`
    ${open.found > 0 ? lines(open) : isAsked ? '' : html`<p>${words.jobs.allFinished}</p>`}
    ${finished.found === 0 ? '' : html`
      <details ?open=${isAsked || withFinished} @toggle=${lookAtFinished}>
        <summary>${words.jobs.finished(finished.found)}</summary>
        ${lines(finished)}
      </details>`}`
}

/** For who opens it for the first time. */
const welcome = () => html`
  ${words.jobs.welcome.map((sentence) => html`<p class="welcome">${sentence}</p>`)}
  <p><button type="button" @click=${openDemo}>${words.jobs.demo}</button></p>
  <p class="hint">${words.jobs.demoHint}</p>`

const openDemo = () =>
  attempt(async () => {
    const made = await underWay(makeDemo)
    if (made) go(toScreen(made.job, 'plan'))
  })

/** They are read when they are first asked for. @param {Event} event */
function lookAtFinished({ currentTarget }) {
  const { open } = /** @type {HTMLDetailsElement} */ (currentTarget)
  const isNew = open && !withFinished && asked.trim() === ''
  if (asked.trim() === '') withFinished = open
  if (isNew) attempt(readJobs)
}

/** @param {Lines} of */
const lines = ({ lines, found }) => html`
  <ul class="job-list">${repeat(lines, ({ job }) => job, line)}</ul>
  ${lines.length < found
    ? html`<button type="button" class="quiet" @click=${askMore}>${words.jobs.more(found - lines.length)}</button>`
    : ''}`

/** @param {JobLine} job */
function line(job) {
  const facts = [
    // Where the layout is waited for, that is said below.
    job.engine ?? (job.waits.length > 0 ? '' : words.jobs.noEngine),
    job.refused ? words.jobs.refused : '',
    job.photos > 0 ? words.jobs.photos(job.photos) : '',
  ]
  return html`
    <li>
      <a href=${toScreen(job.job, job.engine ? 'plan' : 'intake')}>
        <strong>${[job.customer, job.machine].filter(Boolean).join(' · ') || words.frame.unnamed}</strong>
        <span>${facts.filter(Boolean).join(' · ')}</span>
        ${job.damaged ? html`<span class="job-damaged">${words.jobs.damaged}</span>` : ''}
        ${job.waits.length > 0 ? html`<span class="job-waits">${job.waits.map(waiting).join(' · ')}</span>` : ''}
        <span>${job.closed_at === null
          ? words.jobs.changed(moment(job.changed_at))
          : words.jobs.closed(day(dayOf(job.closed_at)))}</span>
      </a>
    </li>`
}

/** @param {Waiting} of */
const waiting = ({ waits_for, count }) => words.jobs.waits[waits_for](count)

const newJob = () =>
  attempt(async () => {
    state.saved = await createJob()
    go(toScreen(state.saved.job, 'intake'))
  })

/** @param {number} at */
const daysSince = (at) => Math.floor((Date.now() - at) / (24 * 60 * 60 * 1000))
