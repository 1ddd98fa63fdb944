// What was entered about something that a job no longer has: a line that was taken off, a part of another layout. It is
// dropped when the job is opened.
/** @import { JobView } from './types/api.d.ts' */
import { draftsOf, forgetDraft } from './controls/form.js'
import { keyId } from './controls/price.js'
import { estimateLineId } from './costs/estimate.js'
import { dropTexts } from './drafts.js'
import { itemKey } from './lists/key.js'
import { placeId } from './marks/place.js'
import { gradeOf } from './sheet/grades.js'
import { lineOf } from './sheet/line-key.js'
import { rowsOf } from './sheet/series-rows.js'

/** @typedef {(view: JobView, about: string, entered: any) => boolean} IsThere */

/** Every part, and what is recorded beside the parts. @param {JobView} view */
const recorded = ({ assessment }) => [...assessment.parts, ...assessment.outside]

/** @type {IsThere} */
const hasItem = ({ assessment }, about) =>
  assessment.lists.some(({ items }) => items.some((item) => itemKey(item) === about))

/** @type {IsThere} */
const hasGroup = ({ assessment }, about) => assessment.sizing.groups.some(({ group }) => group === about)

/** @type {IsThere} */
const hasPart = (view, about) => recorded(view).some(({ part }) => part === about)

/** @type {IsThere} */
const hasCharge = ({ assessment }, about) => assessment.quote.lines.some(({ of }) => keyId(of) === about)

/** By the word of the form; all others are of the job itself. @type {Record<string, IsThere | undefined>} */
const IS_THERE = {
  'strip-down': ({ prices }, about) => prices.currency === about,
  answer: ({ strip_down, assessment }, about) =>
    strip_down.ordered?.edit === about || assessment.approval.proposal === about,
  line: (view, about) => about.split('.')[0] === 'new' || lineOf(view, about) !== undefined,
  series: ({ sheet }, about, { before }) =>
    !before || rowsOf(sheet, /** @type {import('./sheet/series-rows.js').Series} */ (about))
      .some(({ size }) => size === before),
  grades: (view, _, { before }) => !before || gradeOf(view, before) !== undefined,
  mark: ({ assessment }, about) => assessment.marks.places.some(({ place }) => placeId(place) === about),
  size: hasGroup,
  marks: hasGroup,
  confirm: hasGroup,
  price: hasCharge,
  'own-price': (view, about) => hasCharge(view, keyId({ own: about }), null),
  estimate: ({ estimate }, about) =>
    about === 'new' || estimate.some((_, place) => estimateLineId(estimate, place) === about),
  way: ({ assessment }, about) => assessment.ways.some(({ kind }) => kind === about),
  tick: hasItem,
  test: hasItem,
  supply: hasItem,
  overrule: hasPart,
  tag: hasPart,
  markup: (view, about) => recorded(view).some(({ part, photos }) =>
    photos.some((photo) => about === `${part} ${photo}`)),
}

/** @param {JobView} view as it was opened */
export function dropGone(view) {
  for (const { name, word, about, entered } of draftsOf(view.job)) {
    if (!(IS_THERE[word]?.(view, about, entered) ?? true)) forgetDraft(name)
  }
  dropTexts((key) => {
    const [job, part = '', what] = key.split(' ')
    return job === view.job && what === 'note' && !hasPart(view, part, null)
  })
}
