// The back of a shell, which is looked at by itself: a clean face says nothing of it.
/** @import { PartView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { kindOf, zonesOf } from '../catalogue.js'
import { tick } from '../controls/input.js'
import { append } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.part

/** @param {string} job @param {PartView} open */
export const back = (job, { kind, part, back_clean }) =>
  !zonesOf(kindOf(kind).zone_map).some(({ id }) => id === 'back') ? '' : html`
    <div>${tick({
      label: text.backClean,
      hint: text.backCleanHint,
      checked: back_clean,
      enter: (clean) => append(job, { do: 'clean-back', part, clean }),
    })}</div>`
