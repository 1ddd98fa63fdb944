// A mark in words, as it is listed and as the thumb's button tells what it will note.
/** @import { Mark } from '../types/api.d.ts' */
import { words } from '../words.js'

const text = words.marks

/** @param {Mark} mark */
export function inWords({ text: stamped, marking, side, points }) {
  const facts = [
    `“${stamped.trim()}”`,
    marking === 'made' ? text.made : '',
    side === 'underneath' ? text.underneath : side ? text.onSide(text.sides[side]) : '',
    points ? text.pointsTo(text.ends[points]) : '',
  ]
  return facts.filter(Boolean).join(', ')
}
