// The figures of a sheet in words.
/** @import { Line, Rate } from '../types/api.d.ts' */
import { quantityOf } from '../catalogue.js'
import { words } from '../words.js'

const text = words.sheet

/** The first column of a stated figure. @param {string} stated */
const first = (stated) => stated.split('=')[0]?.trim() ?? ''

/** "2.999 to 3.000 in". @param {string} [min] @param {string} [max] */
export function range(min, max) {
  if (!min && !max) return ''
  if (!min || !max) return min ? text.from(first(min)) : text.upTo(first(max ?? ''))
  const [low, high] = [first(min), first(max)]
  if (low === high) return low
  const unit = / *[^\d.,]+$/.exec(high)?.[0] ?? ''
  return text.range(unit && low.endsWith(unit) ? low.slice(0, -unit.length) : low, high)
}

/** How far it may wear. @param {Line} line */
export function limit({ of, limit, fails_at_limit, limit_is_least = false, rate }) {
  const { wears_smaller } = quantityOf(of.kind, of.quantity)
  const isLeast = wears_smaller || limit_is_least
  if (limit) return bound(isLeast, fails_at_limit)(first(limit))
  return rate ? `${bound(isLeast, fails_at_limit)('')} ${rateWords(rate)}`.trim() : ''
}

/** @param {boolean} least @param {boolean} [exclusive] */
const bound = (least, exclusive) => (exclusive ? (least ? text.moreThan : text.lessThan) : least ? text.atLeast : text.atMost)

/** @param {Rate} rate */
function rateWords({ by, per, of, beyond_range }) {
  const share = typeof of === 'object' ? text.rateGiven(by, per, of.given) : text.rateOf(by, per, text.rateBases[of])
  return beyond_range ? text.beyond(share) : share
}
