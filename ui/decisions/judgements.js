// Parts that are decided alike: the same outcome by the same rule.
/** @import { Outcome, PartView } from '../types/api.d.ts' */
import { catalogue, kindOf } from '../catalogue.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.decisions

/**
 * @typedef {object} Judgement
 * @property {string} id as it stands in the address
 * @property {Outcome} outcome
 * @property {string} because why, in a sentence for all of them
 * @property {string} source
 * @property {PartView[]} parts
 */

/** All of them, the severest outcome first; in each what a person decided otherwise stands foremost.
 * @param {PartView[]} parts @returns {Judgement[]} */
export function judgements(parts) {
  /** @type {Map<string, PartView[]>} */
  const groups = new Map()
  for (const part of parts) groups.set(idOf(part), [...(groups.get(idOf(part)) ?? []), part])
  const severest = catalogue().outcomes.map(({ id }) => id)
  const rank = (/** @type {Judgement} */ { outcome, parts }) =>
    2 * severest.indexOf(outcome) + (parts.some(isOverruled) ? 1 : 0)
  return [...groups].map(([id, parts]) => judgementOf(id, parts)).sort((one, other) => rank(other) - rank(one))
}

/** The judgement of a part. @param {PartView} part */
export const idOf = (part) =>
  `${part.decision.outcome}.${isOverruled(part) ? 'otherwise' : part.decision.reasons[0]?.rule ?? 'none'}`

/** @param {PartView} part */
export const isOverruled = ({ decision }) => decision.overruled_because !== null

/** @param {string} id @param {PartView[]} parts @returns {Judgement} */
function judgementOf(id, parts) {
  const [first] = parts
  if (!first) throw new Error('A judgement is of one part at least.')
  const [reason] = first.decision.reasons
  const isSame = parts.every(({ decision }) => decision.reasons[0]?.because === reason?.because)
  const otherwise = parts.some(isOverruled) ? text.overruled : ''
  const why = reason ? (isSame ? reason.because : reason.why) : text.noReasons
  return {
    id,
    outcome: first.decision.outcome,
    because: capitalised(otherwise || why),
    source: otherwise ? '' : reason?.source ?? '',
    parts,
  }
}

/** "Main bearing shell × 10, rod bearing shell × 8"; one part by its own name. @param {PartView[]} parts */
export function partsInWords(parts) {
  /** @type {Map<string, string[]>} */
  const kinds = new Map()
  for (const { kind, label } of parts) {
    const name = kindOf(kind).name
    kinds.set(name, [...(kinds.get(name) ?? []), label])
  }
  return capitalised([...kinds].map(([name, labels]) =>
    (labels.length === 1 ? labels.join('') : text.several(name, labels.length))).join(', '))
}
