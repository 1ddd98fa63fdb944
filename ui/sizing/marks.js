// The marks of block, rods and crankshaft by which the sheet grades standard shells: read once, then the order names
// the grade for each bearing.
/** @import { GroupPlan, JobView, Part, PartKind } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { sizeGroupOf } from '../catalogue.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { submit } from '../edits/queue.js'
import { words } from '../words.js'

const text = words.sizing

/** @type {Record<string, PartKind | undefined>} */
const HOUSINGS = { mains: 'housing-bore', crankpins: 'rod' }

/** @param {JobView} view @param {GroupPlan} plan */
export function marks(view, { group }) {
  if (!view.sheet.grades?.some(({ journals }) => journals === group)) return ''
  const kinds = [HOUSINGS[group], sizeGroupOf(group).kind]
  const parts = view.assessment.parts.filter(({ kind }) => kinds.includes(kind))
  const form = formOf(`marks ${view.job} ${group}`, () => /** @type {Record<Part, string>} */ ({ ...view.grade_marks }))
  const { entered, refusal, enter, send } = form
  const unread = parts.filter(({ part }) => !view.grade_marks[part]).length
  const save = (/** @type {Event} */ event) => {
    event.preventDefault()
    return send((typed) => submit(
      view.job,
      ...parts
        .filter(({ part }) => (typed[part] ?? '').trim() !== (view.grade_marks[part] ?? ''))
        .map(({ part }) => ({ do: /** @type {const} */ ('read-mark'), part, mark: typed[part] ?? '' })),
    ))
  }
  return html`
    <details ?open=${unread > 0 && form.touched}>
      <summary>${text.gradeMarks(unread)}</summary>
      <p class="hint">${text.gradeMarksHint}</p>
      <form class="entry" @submit=${save}>
        ${foundDraft(form)}
        <div class="series-fields">${parts.map(({ part, label }) => input({
          id: `mark-${part}`,
          label,
          value: entered[part] ?? '',
          kind: 'code',
          enter: (mark) => enter({ [part]: mark }),
        }))}</div>
        <p role="alert" class="refusal">${refusal}</p>
        <button class="primary">${text.saveMarks}</button>
      </form>
    </details>`
}
