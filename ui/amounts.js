// Amounts: typed as decimals of a currency, kept and sent as whole minor units, so that nothing is ever a fraction.
import { catalogue } from './catalogue.js'
import { words } from './words.js'

const text = words.money

/** The code that stands for no currency in particular (ISO 4217). */
const NONE = 'XXX'

/** Whether a list of prices says in which currency it is. @param {{ currency: string } | null} prices */
export const hasCurrency = (prices) => prices !== null && prices.currency !== NONE

/** The code for a field; empty as long as there is none. @param {string} currency */
export const codeOf = (currency) => (currency === NONE ? '' : currency)

/** @param {string} currency */
const decimalsOf = (currency) => catalogue().amounts.decimals[currency] ?? 2

/** An amount as it stands on paper: `1 234.50 EUR`. @param {number} minor @param {string} currency */
export function shown(minor, currency) {
  const [whole = '', fraction] = plain(Math.abs(minor), currency).split('.')
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, '\u202f')
  return `${minor < 0 ? '−' : ''}${grouped}${fraction ? `.${fraction}` : ''}\u00a0${currency}`
}

/** An amount for a field: `1234.50`. @param {number} minor @param {string} currency */
export function plain(minor, currency) {
  const decimals = decimalsOf(currency)
  const digits = String(minor).padStart(decimals + 1, '0')
  return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`
}

/** Reads what people type: `1234.5`, `1 234,50`; nothing typed is zero. Throws a sentence when it can't be.
 * @param {string} typed @param {string} currency @returns {number} minor units */
export function read(typed, currency) {
  const decimals = decimalsOf(currency)
  const bare = typed.replace(/\s/g, '').replace(new RegExp(`${currency}$`), '')
  if (bare === '') return 0
  const [, whole, fraction = ''] = /^(\d*)(?:[.,](\d*))?$/.exec(bare) ?? []
  if (whole === undefined || whole + fraction === '') throw new Error(text.noAmount(typed.trim()))
  if (fraction.length > decimals) throw new Error(text.tooFine(typed.trim(), currency, decimals))
  const minor = Number(whole + fraction.padEnd(decimals, '0'))
  if (minor > catalogue().amounts.largest) throw new Error(text.tooMuch(typed.trim()))
  return minor
}

/** Reads three letters. @param {string} typed */
export function readCurrency(typed) {
  const code = typed.trim().toUpperCase()
  if (!/^[A-Z]{3}$/.test(code) || code === NONE) throw new Error(text.noCurrency(typed.trim()))
  return code
}

/** Reads per cent into hundredths of it: `8.25` becomes 825. @param {string} typed */
export function readRate(typed) {
  const [, whole, fraction = ''] = /^(\d{1,3})(?:[.,](\d{0,2}))?\s*%?$/.exec(typed.trim() || '0') ?? []
  if (whole === undefined) throw new Error(text.noRate(typed.trim()))
  return Number(whole + fraction.padEnd(2, '0'))
}

/** @param {number} rate hundredths of a per cent */
export const plainRate = (rate) => String(rate / 100)
