// The sizes of the rebuild.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'

/** @param {JobView} _view */
export const sizes = (_view) => ({ title: words.screens.sizes, body: html`` })
