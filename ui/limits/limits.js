// The job's spec sheet.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'

/** @param {JobView} _view */
export const limits = (_view) => ({ title: words.screens.limits, body: html`` })
