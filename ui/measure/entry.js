// What is typed into the pad, by a thumb, a keyboard or a micrometer that is one: a number, with or without its unit.

const NUMBER = '[+\\-−]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)'
const UNIT = '(?:mm|[uµμ]m|inch|in|["″”]|thousandths|thou)'
const VALUE = new RegExp(`^${NUMBER}\\s*${UNIT}?$`, 'i')
/** A value with its unit, and the first sign of the next. Some micrometers send nothing else between two readings. */
const FOLLOWED = new RegExp(`^\\s*(${NUMBER}\\s*${UNIT})\\s*(?=[+\\-−\\d.,])`, 'i')

/** Whether a text is a length to the eye; whether it can be one, the core decides. @param {string} text */
export const isValue = (text) => VALUE.test(text.trim())

/** Whole values that were typed on without a key between them, and what is still being typed.
 * @param {string} typed @returns {{ whole: string[], rest: string }} */
export function parted(typed) {
  const whole = []
  let rest = typed
  for (let found = FOLLOWED.exec(rest); found?.[1]; found = FOLLOWED.exec(rest)) {
    whole.push(found[1].trim())
    rest = rest.slice(found[0].length)
  }
  return { whole, rest }
}

/** Whether a text with its unit is a small signed amount, below 2 mm: a difference from what a gauge is set to. A
 * micrometer may send a sign before a whole size. @param {string} text */
export function isDifference(text) {
  const [, number = '', unit = ''] = /^[+\-−]\s*([\d.,]+)\s*(\D*)$/.exec(text.trim()) ?? []
  return number !== '' && Number(number.replace(',', '.')) * inMillimetres(unit) < 2
}

/** @param {string} unit */
function inMillimetres(unit) {
  if (/^mm/i.test(unit)) return 1
  if (/^[uµμ]/i.test(unit)) return 0.001
  return /^thou/i.test(unit) ? 0.0254 : 25.4
}

/** The digits that the next reading will most likely share: all but the last two. @param {string} value */
export function leading(value) {
  const [number = ''] = /^[+\-−]?[\d.,]+/.exec(value.trim()) ?? []
  return number.length > 3 ? number.slice(0, -2) : ''
}

/** Puts a sign before a text, or takes the same one off again. @param {string} text @param {'+' | '−'} sign */
export function signed(text, sign) {
  const bare = text.replace(/^\s*[+\-−]/, '')
  return text.trim().startsWith(sign) ? bare : `${sign}${bare}`
}
