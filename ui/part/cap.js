// The cap of a main bore, where the old one can't be used again: a new one is ordered and finished with its bore.
/** @import { JobView, PartView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { tick } from '../controls/input.js'
import { append } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.part

/** @param {JobView} view @param {PartView} open */
export const cap = ({ job, renewed_caps }, { kind, part }) => kind !== 'housing-bore' ? '' : html`
  <div>${tick({
    label: text.newCap,
    hint: text.newCapHint,
    checked: renewed_caps.includes(part),
    enter: (renewed) => append(job, { do: 'renew-cap', part, renewed }),
  })}</div>`
