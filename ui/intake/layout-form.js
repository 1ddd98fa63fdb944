// The layout as it is being entered. It outlives the page until it is saved.
/** @import { Arrangement, JobView } from '../types/api.d.ts' */
/** @import { Form } from '../controls/form.js' */
import { formOf } from '../controls/form.js'
import { derived } from './defaults.js'

/**
 * @typedef {object} Entered
 * @property {Arrangement | null} arrangement nothing before a start is chosen
 * @property {(keyof Arrangement)[]} touched what the person has set
 *
 * @typedef {<Name extends keyof Arrangement>(name: Name) => (value: Arrangement[Name]) => void} Setter
 */

/** @param {JobView} view @returns {Form<Entered>} */
export function layoutForm({ job, arrangement }) {
  /** @returns {Entered} */
  const start = () => ({ arrangement, touched: [] })
  return formOf(`arrangement ${job}`, start)
}

/** Whether something is chosen that is not saved. @param {JobView} view */
export function isLayoutWaiting(view) {
  const { touched, entered } = layoutForm(view)
  return touched && entered.arrangement !== null
    && JSON.stringify(entered.arrangement) !== JSON.stringify(view.arrangement)
}

/** Changes one value; what depends on it follows, unless the person has set it.
 * @param {Arrangement} arrangement @param {Form<Entered>} form @returns {Setter} */
export const setter = (arrangement, { entered, enter }) => (name) => (value) => {
  const touched = [...entered.touched, name]
  enter({ arrangement: derived({ ...arrangement, [name]: value }, name, touched), touched })
}
