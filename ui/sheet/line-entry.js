// A line of the sheet while it is being typed, and as the sheet has it.
/** @import { Datum, JobView, Line, LineKey, PartKind, Port, Quantity, Rate, Station } from '../types/api.d.ts' */
import { withUnit } from '../lengths.js'
import { words } from '../words.js'

/**
 * @typedef {object} Entered
 * @property {PartKind | ''} kind
 * @property {Quantity | ''} quantity
 * @property {string} name
 * @property {Station | ''} station
 * @property {Port | ''} port
 * @property {string} numbers
 * @property {string} min
 * @property {string} max
 * @property {string} limit
 * @property {boolean} fails
 * @property {boolean} least the limit is the least allowed, although the quantity wears larger
 * @property {string} by
 * @property {string} per
 * @property {'diameter' | 'length' | 'over' | 'given'} base
 * @property {string} given
 * @property {boolean} beyond
 * @property {Datum | ''} datum
 * @property {string} source
 */

/** The page that was typed last: the next line most often stands on the same. @type {Map<string, string>} */
const lastPage = new Map()

/** @param {string} job @param {Entered} entered */
export const rememberPage = (job, { source }) => lastPage.set(job, source)

/** @param {string} job @param {PartKind | ''} kind @param {Quantity | ''} quantity @returns {Entered} */
export const blank = (job, kind, quantity) => ({
  kind, quantity, name: '', station: '', port: '', numbers: '',
  min: '', max: '', limit: '', fails: false, least: false,
  by: '', per: '', base: 'diameter', given: '', beyond: false, datum: '',
  source: lastPage.get(job) ?? '',
})

/** @param {Line} line @returns {Entered} */
export function asSaved({
  of,
  min = '',
  max = '',
  limit = '',
  fails_at_limit = false,
  limit_is_least = false,
  rate,
  datum,
  source,
}) {
  const given = typeof rate?.of === 'object' ? rate.of.given : ''
  return {
    kind: of.kind, quantity: of.quantity, name: of.name ?? '', station: of.station ?? '', port: of.port ?? '',
    numbers: (of.numbers ?? []).join(', '),
    min, max, limit, fails: fails_at_limit, least: limit_is_least,
    by: rate?.by ?? '', per: rate?.per ?? '', base: typeof rate?.of === 'string'
      ? rate.of
      : given
      ? 'given'
      : 'diameter', given, beyond: rate?.beyond_range ?? false,
    datum: datum ?? '', source,
  }
}

/** @param {Entered} entered @param {JobView} view @returns {Line} */
export function asLine(entered, { sheet }) {
  const length = (/** @type {string} */ typed) => withUnit(typed, sheet.head.unit)
  const { min, max, limit, by, per, base, given } = entered
  const of = asKey(entered)
  if (of.numbers?.some(Number.isNaN)) throw new Error(words.sheet.numbersWrong(entered.numbers))
  /** @type {Rate | undefined} */
  const rate = by.trim() || per.trim()
    ? {
      by: length(by),
      per: length(per),
      of: base === 'given' ? { given: length(given) } : base,
      ...(entered.beyond && { beyond_range: true }),
    }
    : undefined
  return {
    of,
    ...(min.trim() && { min: length(min) }),
    ...(max.trim() && { max: length(max) }),
    ...(limit.trim() && { limit: length(limit) }),
    ...(entered.fails && { fails_at_limit: true }),
    ...(entered.least && { limit_is_least: true }),
    ...(rate && { rate }),
    ...(entered.datum && { datum: entered.datum }),
    source: entered.source.trim(),
  }
}

/** @param {Entered} entered @returns {LineKey} */
export function asKey({ kind, quantity, name, station, port, numbers }) {
  const only = numbers.split(/[\s,;]+/)
    .filter(Boolean)
    .map((number) => (/^\d{1,2}$/.test(number) ? Number(number) : NaN))
  return {
    kind: /** @type {PartKind} */ (kind),
    quantity: /** @type {Quantity} */ (quantity),
    ...(quantity === 'other' && { name: name.trim() }),
    ...(station && { station }),
    ...(port && { port }),
    ...(only.length > 0 && { numbers: only }),
  }
}
