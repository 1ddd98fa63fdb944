// What came with the engine, ticked as it is given back.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { tick } from '../controls/input.js'
import { append } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.ancillaries

/** @param {JobView} view */
export const givenBack = ({ job, ancillaries }) =>
  (ancillaries.length === 0 ? '' : html`
    <section aria-labelledby="given-back">
      <h2 id="given-back">${text.givenBack}</h2>
      ${ancillaries.map(({ edit, what, remark, given_back }) =>
        tick({
          label: what,
          hint: remark,
          checked: given_back,
          enter: (given) => append(job, { do: 'give-back', item: edit, given }),
        }))}
    </section>`)
