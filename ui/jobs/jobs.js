// The engines on the bench.
/** @import { JobLine } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { createJob, importArchive, listJobs } from '../backend.js'
import { fileButton } from '../controls/file-button.js'
import { day, dayOf, moment } from '../dates.js'
import { underWay } from '../frame/under-way.js'
import { go, toScreen, toShop } from '../route.js'
import { attempt, state } from '../state.js'
import { words } from '../words.js'
import { found, isSearching, search } from './search.js'

/** As they were read last. @type {JobLine[] | null} */
let all = null

export async function readJobs() {
  all = await listJobs()
}

export function jobs() {
  return {
    title: words.screens.jobs,
    body: html`
      ${all === null
        ? html`<p>${state.alert ? '' : words.frame.loading}</p>`
        : all.length === 0
          ? words.jobs.welcome.map((sentence) => html`<p class="welcome">${sentence}</p>`)
          : html`${search(all)}${onBench(found(all), isSearching(all))}`}`,
    bar: html`
      <div class="bar">
        ${all?.length ? html`<a class="button" href=${toShop('label')}>${words.screens.label}</a>` : ''}
        ${fileButton({ label: words.jobs.importFile, accept: '.wearbook', take: openArchive })}
        <button type="button" class="primary" @click=${newJob}>${words.jobs.create}</button>
      </div>`,
  }
}

/** What is on the bench; what is finished is put away below it, but not what was asked for.
 * @param {JobLine[]} lines @param {boolean} isAsked */
function onBench(lines, isAsked) {
  const open = lines.filter(({ closed_at }) => closed_at === null)
  const finished = lines.filter(({ closed_at }) => closed_at !== null)
  return html`
    ${open.length > 0
      ? html`<ul class="job-list">${open.map(line)}</ul>`
      : isAsked ? '' : html`<p>${words.jobs.allFinished}</p>`}
    ${finished.length === 0 ? '' : html`
      <details ?open=${isAsked}>
        <summary>${words.jobs.finished(finished.length)}</summary>
        <ul class="job-list">${finished.map(line)}</ul>
      </details>`}`
}

/** @param {JobLine} job */
function line(job) {
  const facts = [
    job.engine ?? words.jobs.noEngine,
    job.refused ? words.jobs.refused : '',
    job.parts > 0 ? words.jobs.looked(job.looked, job.parts) : '',
    job.photos > 0 ? words.jobs.photos(job.photos) : '',
  ]
  return html`
    <li>
      <a href=${toScreen(job.job, job.engine ? 'plan' : 'intake')}>
        <strong>${[job.customer, job.machine].filter(Boolean).join(' · ') || words.frame.unnamed}</strong>
        <span>${facts.filter(Boolean).join(' · ')}</span>
        <span>${job.closed_at === null
          ? words.jobs.changed(moment(job.changed_at))
          : words.jobs.closed(day(dayOf(job.closed_at)))}</span>
      </a>
    </li>`
}

const newJob = () =>
  attempt(async () => {
    state.saved = await createJob()
    go(toScreen(state.saved.job, 'intake'))
  })

/** @param {File[]} files */
const openArchive = ([file]) =>
  attempt(async () => {
    if (!file) return
    const taken = await underWay((way) => importArchive(file, way))
    if (taken) go(toScreen(taken.job, 'plan'))
  })
