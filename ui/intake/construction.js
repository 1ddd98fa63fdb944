// How the engine is made, as far as the work depends on it. All of it may stay open.
/** @import { Arrangement, Construction } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { choice, optionsOf } from '../controls/choice.js'
import { words } from '../words.js'

const text = words.layout

/** @param {Arrangement} arrangement @param {(value: Construction) => void} set */
export function construction({ construction = {}, camshaft }, set) {
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
        set(value === null ? others : { ...others, [name]: value })
      },
    })
  const told = Object.keys(construction).length > 0
  return html`
    <details class="more" ?open=${told}>
      <summary>${text.construction}</summary>
      <p class="hint">${text.constructionHint}</p>
      ${ask('thrust', text.thrust, text.thrusts)}
      ${camshaft === 'none' ? '' : ask('cam_bore', text.camBore, text.camBores)}
      ${ask('bore_wall', text.boreWall, text.boreWalls)}
      ${ask('cooling', text.cooling, text.coolings)}
      ${ask('cylinders', text.pistonsRun, text.cylindersOf)}
      ${ask('ignition', text.ignition, text.ignitions)}
      ${ask('heads', text.heads, text.headsOf)}
    </details>`
}
