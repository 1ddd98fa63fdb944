// The mark that most likely stands at a place: on a cap that of its own rod, else that of the last cap or rod of the
// same kind with the place's own number. It is only filled in: the person who looks at the cap says whether it is so.
/** @import { Mark, MarkPlace, MarkView } from '../types/api.d.ts' */
import { placeId, placeKind, placeNumber } from './place.js'

/** None while no mark of this kind is noted.
 * @param {MarkView[]} places @param {MarkView} asked @returns {Mark | null} */
export function likelyMark(places, asked) {
  const { place } = asked
  // A rod and its cap are stamped as a pair.
  const rod = 'rod-cap' in place ? markAt(places, { rod: place['rod-cap'] }) : null
  if (rod) return rod
  const here = places.indexOf(asked)
  const isAlike = (/** @type {MarkView} */ one) => one.mark && placeKind(one.place) === placeKind(place)
  const last = places.slice(0, here).filter(isAlike).at(-1) ?? places.slice(here + 1).find(isAlike)
  if (!last?.mark) return null
  return { ...last.mark, text: counted(last.mark.text, placeNumber(last.place), placeNumber(place)) }
}

/** @param {MarkView[]} places @param {MarkPlace} at */
const markAt = (places, at) => places.find(({ place }) => placeId(place) === placeId(at))?.mark ?? null

/** What stands around the number stays: after “1L” comes “2L”.
 * @param {string} text @param {string} from @param {string} to */
function counted(text, from, to) {
  const stamped = text.trim()
  if (stamped === letter(from)) return letter(to)
  const next = stamped.replace(/\d+/, (digits) => (digits === from ? to : digits))
  return next === stamped ? to : next
}

/** Some engines are lettered. @param {string} number */
const letter = (number) => String.fromCharCode(64 + Number(number))
