// How the customer is reached: telephone and mail, each with its own keys. They are kept as one line, as it is printed.
/** @import { JobView } from '../types/api.d.ts' */
/** @import { Form } from '../controls/form.js' */
import { html } from '../vendor/lit-html/lit-html.js'
import { field } from '../controls/field.js'
import { formOf } from '../controls/form.js'
import { append } from '../edits/queue.js'
import { shownJob } from '../state.js'
import { words } from '../words.js'

/** @typedef {{ telephone: string, mail: string }} Contact */

/** As they were typed last, where the line does not tell: half a mail address looks like any other word.
 * @param {string} job @returns {Form<Contact>} */
const typedOf = (job) => formOf(`contact ${job}`, () => ({ telephone: '', mail: '' }))

/** @param {JobView} view */
export function contact(view) {
  const { telephone, mail } = contactOf(view)
  /** @param {(text: string) => Partial<Contact>} change */
  const save = (change) => (/** @type {string} */ text) => {
    const latest = shownJob()
    const next = { ...contactOf(latest?.job === view.job ? latest : view), ...change(text) }
    const line = inOneLine(next)
    if (isSame(apart(line), next)) typedOf(view.job).forget()
    else typedOf(view.job).enter(next)
    return append(view.job, { do: 'fill', field: 'contact', text: line })
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
  const { entered } = typedOf(job)
  return inOneLine(entered) === line ? entered : apart(line)
}

/** @param {Contact} one @param {Contact} other */
const isSame = (one, other) => one.telephone === other.telephone && one.mail === other.mail

/** @param {Contact} contact */
const inOneLine = ({ telephone, mail }) => [telephone.trim(), mail.trim()].filter(Boolean).join(', ')

/** What has an @ is the mail address; all else stands with the telephone number.
 * @param {string} line @returns {Contact} */
function apart(line) {
  const mail = line.split(/[\s,;]+/).find((word) => word.includes('@')) ?? ''
  return { telephone: line.replace(mail, '').replace(/^[\s,;]+|[\s,;]+$/g, ''), mail }
}
