// How the engine is made, as far as the work depends on it. All of it may stay open.
/** @import { Arrangement, Construction } from '../types/api.d.ts' */
/** @import { Setter } from './layout-form.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { choice, optionsOf } from '../controls/choice.js'
import { words } from '../words.js'

const text = words.layout

/** @param {Arrangement} arrangement @param {Setter} set */
export function construction({ construction = {}, camshaft, oil_from }, set) {
  /** @template {keyof Construction} Name @param {Name} name @param {string} legend
   * @param {Record<NonNullable<Construction[Name]>, string>} answers */
  const ask = (name, legend, answers) =>
    choice({
      name,
      legend,
      options: [...optionsOf(answers), { value: null, label: text.notKnown }],
      value: construction[name] ?? null,
      choose: (value) => {
        const { [name]: _, ...others } = construction
        set('construction')(value === null ? others : { ...others, [name]: value })
      },
    })
  return html`
    <p class="hint">${text.constructionHint}</p>
    ${choice({
      name: 'oil-from',
      legend: text.oilFrom,
      options: [...optionsOf(text.oilEnds), { value: null, label: text.oilUnknown }],
      value: oil_from ?? null,
      choose: (end) => set('oil_from')(end ?? undefined),
    })}
    ${ask('thrust', text.thrust, text.thrusts)}
    ${camshaft === 'none' ? '' : ask('cam_bore', text.camBore, text.camBores)}
    ${ask('bore_wall', text.boreWall, text.boreWalls)}
    ${ask('cooling', text.cooling, text.coolings)}
    ${ask('cylinders', text.pistonsRun, text.cylindersOf)}
    ${ask('ignition', text.ignition, text.ignitions)}
    ${ask('heads', text.heads, text.headsOf)}`
}
