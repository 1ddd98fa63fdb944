// What a change will look like once the store has it, so that a tap shows within a frame. Only what the person
// touched is guessed: causes and decisions wait for the answer.
/** @import { Ancillary, Change, Finding, Instrument, JobView } from '../types/api.d.ts' */
/** @import { ListItem, PartView, Reading, ReadingView } from '../types/api.d.ts' */
/** @import { Recorded } from '../part/photos.js' */
import { tagOf } from '../catalogue.js'
import { itemKey } from '../lists/key.js'
import { placeId } from '../marks/place.js'

/** @param {JobView} view @param {Change} change @returns {JobView} */
export function guess(view, change) {
  switch (change.do) {
    case 'fill':
      return { ...view, texts: { ...view.texts, [change.field]: change.text } }
    case 'complain': {
      const others = view.complaints.filter((complaint) => complaint !== change.complaint)
      return { ...view, complaints: change.told ? [...others, change.complaint] : others }
    }
    case 'recall':
      return { ...view, history: { ...view.history, [change.fact]: change.answer } }
    case 'note-mark':
      return withMark(view, change)
    case 'tag':
      return withRecord(view, change.part, (part) => tagged(part, change))
    case 'untag':
      return withRecord(view, change.part, (part) =>
        seenAnew({ ...part, findings: part.findings.filter((finding) => finding.tag !== change.tag) }))
    case 'clean':
      return withRecord(view, change.part, (part) => ({ ...part, findings: [], worst: null, seen: 'clean' }))
    case 'remark':
      return withRecord(view, change.part, (part) => ({ ...part, note: change.text }))
    case 'remove-photo':
      return withRecord(view, change.part, (part) =>
        ({ ...part, photos: part.photos.filter((photo) => photo !== change.photo) }))
    case 'mark-up':
      return withRecord(view, change.part, (part) =>
        ({
          ...part,
          drawn: {
            ...part.drawn,
            [change.photo]: [...(part.drawn[change.photo] ?? []), { edit: '', markup: change.markup }],
          },
        }))
    case 'overrule':
      return withPart(view, change.part, (part) =>
        ({ ...part, decision: { ...part.decision, outcome: change.outcome, overruled_because: change.reason } }))
    case 'follow-rules':
      return withPart(view, change.part, (part) =>
        ({ ...part, decision: { ...part.decision, outcome: part.decision.by_rules, overruled_because: null } }))
    case 'note-instrument': {
      const others = view.instruments.filter(({ id }) => id !== change.instrument.id)
      return { ...view, instruments: [...others, change.instrument] }
    }
    case 'measure':
      return withPart(view, change.reading.part, (part) => measured(part, change.reading, view.instruments))
    case 'tick':
      return withItem(
        view,
        itemKey({ asked: change.item }),
        (item) =>
          ({ ...item, tick: change.tick.done > 0 || change.tick.note || change.tick.part_number ? change.tick : null }),
      )
    case 'close':
      return { ...view, closed_at: change.closed ? Date.now() : null }
    case 'give-back':
      return withAncillary(view, change.item, { given_back: change.given })
    case 'found-size': {
      const { [change.group]: _before, ...others } = view.found_sizes
      return { ...view, found_sizes: change.size ? { ...others, [change.group]: change.size } : others }
    }
    default:
      // An arrangement and an undo change too much to be guessed.
      return view
  }
}

/** @param {JobView} view @param {string} part @param {string} preview @returns {JobView} */
export const guessPhoto = (view, part, preview) =>
  withRecord(view, part, (seen) => ({ ...seen, photos: [...seen.photos, preview] }))

/** @param {JobView} view @param {string} item @param {string} preview @returns {JobView} */
export const guessAncillaryPhoto = (view, item, preview) => withAncillary(view, item, { photo: preview })

/** @param {JobView} view @param {string} item @param {Partial<Ancillary>} change @returns {JobView} */
const withAncillary = (view, item, change) => ({
  ...view,
  ancillaries: view.ancillaries.map((own) => (own.edit === item ? { ...own, ...change } : own)),
})

/** With what was recorded of a part, or beside the parts.
 * @param {JobView} view @param {string} name @param {<Here extends Recorded>(here: Here) => Here} alter
 * @returns {JobView} */
function withRecord(view, name, alter) {
  const outside = view.assessment.outside.map((here) => (here.part === name ? alter(here) : here))
  return withPart({ ...view, assessment: { ...view.assessment, outside } }, name, alter)
}

/** @param {JobView} view @param {string} name @param {(part: PartView) => PartView} alter @returns {JobView} */
function withPart(view, name, alter) {
  const { outside } = view.assessment
  const parts = view.assessment.parts.map((part) => (part.part === name ? alter(part) : part))
  const progress = {
    // Which of them ask for a look of their own a tap hardly changes.
    parts: view.assessment.progress.parts,
    looked: parts.filter((part) => part.seen === 'clean' || part.seen === 'worn').length,
    worn: parts.filter((part) => part.seen === 'worn').length,
    photos: [...parts, ...outside].reduce((sum, { photos }) => sum + photos.length, 0),
  }
  return { ...view, assessment: { ...view.assessment, parts, progress } }
}

/** @template {Recorded} Here @param {Here} part @param {Extract<Change, { do: 'tag' }>} change @returns {Here} */
function tagged(part, change) {
  const { tag, grade, zones } = change
  const row = tagOf(tag)
  /** @type {Finding} */
  const finding = { tag, grade, zones, name: row.name, sentence: row.grades[grade - 1] ?? '' }
  const others = part.findings.filter((other) => other.tag !== tag)
  return seenAnew({ ...part, findings: [...others, finding].sort((a, b) => b.grade - a.grade) })
}

/** The reading as it was typed; its corrected length and all figures wait for the answer.
 * @param {PartView} part @param {Reading} taken @param {Instrument[]} instruments @returns {PartView} */
function measured(part, taken, instruments) {
  const { quantity, value, name = '', spot = {}, phase = 'found' } = taken
  /** @param {ReadingView} other */
  const isReplaced = (other) => other.quantity === quantity && other.name === name && other.phase === phase
    && other.spot.station === spot.station && other.spot.direction === spot.direction
  const earlier = part.readings.map((other) => (isReplaced(other) ? { ...other, stands: false, doubt: null } : other))
  const instrument = instruments.find(({ id }) => id === taken.instrument)?.name ?? ''
  /** @type {ReadingView} */
  const reading = {
    edit: '',
    quantity,
    name,
    spot,
    phase,
    value,
    taken,
    length: 0,
    instrument,
    stands: true,
    doubt: null,
  }
  return { ...part, readings: [...earlier, reading] }
}

/** @template {Recorded} Here @param {Here} part @returns {Here} */
function seenAnew(part) {
  const damage = part.findings.filter((finding) => tagOf(finding.tag).is_damage)
  const worst = damage.reduce((most, finding) => (finding.grade > most ? finding.grade : most), 0) || null
  const seen = worst ? 'worn' : part.findings.length > 0 ? 'clean' : 'not-looked'
  return { ...part, worst: /** @type {PartView['worst']} */ (worst), seen }
}

/** @param {JobView} view @param {string} key @param {(item: ListItem) => ListItem} alter @returns {JobView} */
function withItem(view, key, alter) {
  const lists = view.assessment.lists.map((list) => {
    const items = list.items.map((item) => (itemKey(item) === key ? alter(item) : item))
    return { ...list, items, done: items.filter(({ tick, quantity }) => tick && tick.done >= quantity).length }
  })
  return { ...view, assessment: { ...view.assessment, lists } }
}

/** @param {JobView} view @param {Extract<Change, { do: 'note-mark' }>} change @returns {JobView} */
function withMark(view, change) {
  const here = placeId(change.place)
  const places = view.assessment.marks.places.map((place) =>
    placeId(place.place) === here ? { ...place, mark: change.mark } : place)
  const missing = places.filter((place) => !place.mark).length
  return { ...view, assessment: { ...view.assessment, marks: { ...view.assessment.marks, places, missing } } }
}
