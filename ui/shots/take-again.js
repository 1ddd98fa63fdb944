// Takes the photo that was just taken once more, in one tap.
/** @import { Fresh } from './fresh.js' */
import { words } from '../words.js'
import { takenAgain } from './fresh.js'
import { photoButton, takesPhotos } from './photo-button.js'

const text = words.shots

/** @param {Fresh} fresh @param {string} label of its part */
export const takeAgain = (fresh, label) =>
  takesPhotos()
    ? photoButton({
      ...fresh,
      label: text.takeAgain,
      name: text.takeAgainOf(label),
      named: (photo) => takenAgain(fresh, photo),
    })
    : ''
