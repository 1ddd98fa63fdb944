// Which pieces of an engine get a label: what the paper says is counted here before it is printed.
/** @import { JobView, ListItem, Piece, Pieces } from '../types/api.d.ts' */

/** How the address names them; what is none of these is a part.
 * @typedef {'all' | 'not-looked-at' | 'machine-shop'} Which */
/** @type {readonly Which[]} */
export const WHICH = ['all', 'not-looked-at', 'machine-shop']

/** As it is asked for. @param {string} subject @returns {Pieces} */
export const asked = (subject) => {
  if (subject === '') return 'all'
  return WHICH.find((which) => which === subject) ?? { of: subject }
}

/** @param {JobView} view @param {Pieces} wanted @returns {Piece[]} */
export function piecesOf({ assessment: { outside, parts, lists } }, wanted) {
  const held = [...outside, ...parts]
  if (wanted === 'all') return unlike(held.map(({ piece }) => piece))
  if (wanted === 'not-looked-at') {
    const open = held.filter(({ part, seen, piece }) => seen === 'not-looked' && piece?.part === part)
    return unlike(open.map(({ piece }) => piece))
  }
  const sent = lists.find(({ kind }) => kind === 'machine-shop')?.items.filter((item) => !isDone(item)) ?? []
  const asked = wanted === 'machine-shop' ? sent.flatMap(({ parts }) => parts) : [wanted.of]
  return unlike(asked.map((part) => held.find((own) => own.part === part)?.piece))
}

/** @param {ListItem} item */
const isDone = ({ is_right, tick, quantity }) => is_right || (!!tick && tick.done >= quantity)

/** Each once. @param {(Piece | null | undefined)[]} pieces */
const unlike = (pieces) => [...new Map(pieces.flatMap((own) => (own ? [[own.part, own]] : []))).values()]
