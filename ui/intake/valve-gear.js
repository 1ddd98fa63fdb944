// Camshaft, tappets and valves.
/** @import { Arrangement } from '../types/api.d.ts' */
/** @import { Setter } from './layout-form.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { termOf } from '../catalogue.js'
import { choice, optionsOf } from '../controls/choice.js'
import { count } from '../controls/count.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.layout

/** @param {Arrangement} arrangement @param {Setter} set */
export function valveGear(arrangement, set) {
  const camshaft = choice({
    name: 'camshaft',
    legend: text.camshaft,
    options: optionsOf(text.camshafts),
    value: arrangement.camshaft,
    choose: set('camshaft'),
  })
  if (arrangement.camshaft === 'none') return camshaft
  return html`
    ${camshaft}
    <div class="counts">
      ${count({ label: text.camBearings, value: arrangement.cam_bearings, set: set('cam_bearings') })}
      ${count({ label: text.valves, value: arrangement.valves_per_cylinder, set: set('valves_per_cylinder') })}
    </div>
    ${choice({
      name: 'tappets',
      legend: capitalised(termOf('tappet').plural),
      options: optionsOf(text.tappetKinds),
      value: arrangement.tappets,
      choose: set('tappets'),
    })}`
}
