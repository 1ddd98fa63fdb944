// The trade's tables, looked up by id. They come from the backend in the shop's words, so that no trade
// word is written twice.
/** @import { Conformity, Consent, InstrumentKind, Need, OrderState, Outcome, PartKind } from './types/api.d.ts' */
/** @import { PartState, PriceKey } from './types/api.d.ts' */
/** @import { Quantity, Screen, SizeGroup, Standing, Strength, Tag, Term, ZoneMap } from './types/api.d.ts' */
import { state } from './state.js'
import { capitalised } from './text.js'

export function catalogue() {
  if (!state.catalogue) throw new Error('The catalogue is read before anything is drawn.')
  return state.catalogue
}

/** @template {{ id: string }} Row @param {Row[]} rows @param {string} id @returns {Row} */
function rowOf(rows, id) {
  const row = rows.find((candidate) => candidate.id === id)
  if (!row) throw new Error(`The catalogue has no “${id}”.`)
  return row
}

/** @param {PartKind} id */
export const kindOf = (id) => rowOf(catalogue().kinds, id)
/** @param {Tag} id */
export const tagOf = (id) => rowOf(catalogue().tags, id)
/** @param {Term} id */
export const termOf = (id) => rowOf(catalogue().terms, id)
/** @param {Outcome} id */
export const outcomeWords = (id) => rowOf(catalogue().outcomes, id).words
/** What the trade calls a work on such a part. @param {PriceKey} of */
export const workWords = ({ kind, work }) =>
  (kindOf(kind).works.find(({ id }) => id === work) ?? rowOf(catalogue().works, work)).words
/** A line that stands on every bill. @param {Standing} id */
export const standingWords = (id) => rowOf(catalogue().standing, id).words
/** @param {InstrumentKind} id */
export const instrumentKindOf = (id) => rowOf(catalogue().instrument_kinds, id)
/** @param {SizeGroup} id */
export const sizeGroupOf = (id) => rowOf(catalogue().size_groups, id)
/** @param {Conformity} id */
export const conformityOf = (id) => rowOf(catalogue().conformities, id)
/** How strongly evidence speaks. @param {Strength} id */
export const strengthOf = (id) => rowOf(catalogue().strengths, id)
/** The same of a weight, in doublings of the odds. @param {number} weight */
export const strengthAt = (weight) =>
  catalogue().strengths.filter(({ above }) => weight > above).at(-1) ?? strengthOf('slight')
/** @param {OrderState} id */
export const orderStateWords = (id) => rowOf(catalogue().order_states, id).words
/** @param {PartState} id */
export const partStateWords = (id) => rowOf(catalogue().part_states, id).words
/** @param {Consent} id */
export const consentWords = (id) => rowOf(catalogue().consents, id).words
/** How much a job is needed. @param {Need} id */
export const needWords = (id) => rowOf(catalogue().needs, id).words
/** What a list of rows offers to choose from. @template Id @param {{ id: Id, words: string }[]} rows */
export const choicesOf = (rows) => rows.map(({ id, words }) => ({ value: id, label: capitalised(words) }))
/** What can hurt in what is begun on a screen. @param {Screen} id */
export const cautionsOn = (id) => catalogue().cautions.find(({ screen }) => screen === id)?.cautions ?? []
/** A quantity as this kind of part has it. @param {PartKind} kind @param {Quantity} id */
export const quantityOf = (kind, id) => rowOf(kindOf(kind).quantities, id)
/** The fields of a part's drawing. @param {ZoneMap} map */
export const zonesOf = (map) => catalogue().zone_maps[map] ?? []
