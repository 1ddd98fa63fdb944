// How the customer is reached: telephone and mail, each with its own keys. They are kept as one line, as it is printed.
/** @import { JobView } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { field } from '../controls/field.js'
import { append } from '../edits/queue.js'
import { shownJob } from '../state.js'
import { words } from '../words.js'

/** @typedef {{ telephone: string, mail: string }} Contact */

/** By job, as they were typed last: half a mail address can't be told from the rest of the line.
 * @type {Map<string, Contact>} */
const typed = new Map()

/** @param {JobView} view */
export function contact(view) {
  const { telephone, mail } = contactOf(view)
  /** @param {(text: string) => Partial<Contact>} change */
  const save = (change) => (/** @type {string} */ text) => {
    const latest = shownJob()
    const next = { ...contactOf(latest?.job === view.job ? latest : view), ...change(text) }
    typed.set(view.job, next)
    return append(view.job, { do: 'fill', field: 'contact', text: inOneLine(next) })
  }
  return html`
    <div class="contact">
      ${field({
        key: `${view.job} contact telephone`,
        label: words.intake.telephone,
        saved: telephone,
        kind: 'telephone',
        save: save((telephone) => ({ telephone })),
      })}
      ${field({
        key: `${view.job} contact mail`,
        label: words.intake.mail,
        saved: mail,
        kind: 'mail',
        save: save((mail) => ({ mail })),
      })}
    </div>`
}

/** @param {JobView} view @returns {Contact} */
function contactOf({ job, texts }) {
  const line = texts.contact ?? ''
  const last = typed.get(job)
  return last && inOneLine(last) === line ? last : apart(line)
}

/** @param {Contact} contact */
const inOneLine = ({ telephone, mail }) => [telephone.trim(), mail.trim()].filter(Boolean).join(', ')

/** What has an @ is the mail address; all else stands with the telephone number.
 * @param {string} line @returns {Contact} */
function apart(line) {
  const mail = line.split(/[\s,;]+/).find((word) => word.includes('@')) ?? ''
  return { telephone: line.replace(mail, '').replace(/^[\s,;]+|[\s,;]+$/g, ''), mail }
}
