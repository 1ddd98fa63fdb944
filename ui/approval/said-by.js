// Who answers and how: the same under everything that a customer agrees to.
/** @import { FromAfar } from '../types/api.d.ts' */
/** @import { Stroke } from './signature-pad.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { choice, optionsOf } from '../controls/choice.js'
import { input } from '../controls/input.js'
import { day, today } from '../dates.js'
import { words } from '../words.js'
import { signaturePad, strokes } from './signature-pad.js'

const text = words.approval

/**
 * @typedef {keyof typeof text.ways} Way
 * @typedef {{ name: string, way: Way | undefined, afar: FromAfar, signature: Stroke[] }} Saying as it is entered
 * @typedef {{ name: string, way: string, afar?: FromAfar, said?: string, signature: Stroke[] }} SaidBy
 *   as it is kept
 */

/** What is answered by telephone or message counts only with number, date and time.
 * @type {readonly (Way | undefined)[]} */
const FROM_AFAR = ['telephone', 'message']

/** @param {SaidBy | null} earlier @returns {Saying} */
export const startSaying = (earlier) => ({
  name: earlier?.name ?? '',
  way: undefined,
  afar: { number: '', date: today(), time: new Date().toTimeString().slice(0, 5) },
  signature: [],
})

/** @param {Saying} saying @param {(change: Partial<Saying>) => void} enter */
export const sayingFields = ({ name, way, afar, signature }, enter) => html`
  <h2>${text.who}</h2>
  ${input({ id: 'answer-name', label: text.name, value: name, kind: 'name', enter: (name) => enter({ name }) })}
  ${choice({
    name: 'answer-way',
    legend: text.how,
    options: optionsOf(text.ways),
    value: way,
    choose: (way) => enter({ way }),
  })}
  ${FROM_AFAR.includes(way) ? fromAfar(way, afar, (afar) => enter({ afar })) : ''}
  ${way === 'signed' ? signaturePad(signature, (signature) => enter({ signature })) : ''}`

/** @param {Way | undefined} way @param {FromAfar} afar @param {(afar: FromAfar) => void} enter */
const fromAfar = (way, afar, enter) => html`
  <p class="hint">${text.afarHint}</p>
  ${input({
    id: 'answer-number',
    label: text.number,
    value: afar.number,
    kind: way === 'telephone' ? 'telephone' : 'code',
    enter: (number) => enter({ ...afar, number }),
  })}
  ${input({
    id: 'answer-date',
    label: text.date,
    value: afar.date,
    kind: 'code',
    enter: (date) => enter({ ...afar, date }),
  })}
  ${input({
    id: 'answer-time',
    label: text.time,
    value: afar.time,
    kind: 'code',
    enter: (time) => enter({ ...afar, time }),
  })}`

/** What outlives the page. A signature is not kept beside the log: who signs signs what stands on the screen now.
 * @template {Saying} Entered @param {Entered} entered @returns {Partial<Entered>} */
export const unsigned = ({ signature: _, ...others }) => /** @type {Partial<Entered>} */ (others)

/** That somebody has a name is for the core to judge. @param {Saying} saying @returns {SaidBy} */
export function asSaid({ name, way, afar, signature }) {
  if (way === 'signed' && signature.length === 0) throw new Error(text.signFirst)
  return {
    name: name.trim(),
    way: way ? text.ways[way].toLowerCase() : '',
    ...(FROM_AFAR.includes(way) ? { afar } : {}),
    said: today(),
    signature: way === 'signed' ? signature : [],
  }
}

/** @param {FromAfar | undefined} afar @param {string | undefined} said */
function whence(afar, said) {
  if (afar) return [afar.number, day(afar.date), afar.time]
  return said ? [day(said)] : []
}

/** The signature over who answered and how. @param {SaidBy} said */
export const signed = ({ name, way, afar, said, signature }) => html`
  <div class="signed">
    ${signature.length > 0
      ? html`<svg class="signature" viewBox="0 0 30000 10000" role="img"
        aria-label=${text.signature}>${strokes(signature)}</svg>`
      : ''}
    <p class="signed-by">${text.by([name, way, ...whence(afar, said)])}</p>
  </div>`
