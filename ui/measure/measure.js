// The measuring pad.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'

/** @param {JobView} _view */
export const measure = (_view) => ({ title: words.screens.measure, body: html`` })
