// The engines on the bench.
/** @import { JobLine } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { createJob, importArchive } from '../backend.js'
import { fileButton } from '../controls/file-button.js'
import { go, toSheet } from '../route.js'
import { attempt, state } from '../state.js'
import { moment, words } from '../words.js'

export function jobList() {
  return {
    title: words.screens.jobs,
    body: html`
      ${state.jobs === null
        ? html`<p>${state.alert ? '' : words.frame.loading}</p>`
        : state.jobs.length === 0
          ? html`<p>${words.jobs.none}</p>`
          : html`<ul class="job-list">${state.jobs.map(line)}</ul>`}`,
    bar: html`
      <div class="bar">
        ${fileButton({ label: words.jobs.importFile, accept: '.wearbook', take: openArchive })}
        <button type="button" class="primary" @click=${newJob}>${words.jobs.create}</button>
      </div>`,
  }
}

/** @param {JobLine} job */
function line(job) {
  const facts = [
    job.engine ?? words.jobs.noEngine,
    job.parts > 0 ? words.jobs.looked(job.looked, job.parts) : '',
    job.photos > 0 ? words.jobs.photos(job.photos) : '',
  ]
  return html`
    <li>
      <a href=${toSheet(job.job, job.engine ? 'plan' : 'intake')}>
        <strong>${[job.customer, job.machine].filter(Boolean).join(' · ') || words.frame.unnamed}</strong>
        <span>${facts.filter(Boolean).join(' · ')}</span>
        <span>${words.jobs.changed(moment(job.changed_at))}</span>
      </a>
    </li>`
}

const newJob = () =>
  attempt(async () => {
    state.saved = await createJob()
    go(toSheet(state.saved.job, 'intake'))
  })

/** @param {File[]} files */
const openArchive = ([file]) =>
  attempt(async () => {
    if (!file) return
    const { job } = await importArchive(file)
    go(toSheet(job, 'plan'))
  })
