// The surface that the manual asks for on journals and bores, in its own words: handed on to the machinist.
/** @import { JobView, SizeGroup } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { sizeGroupOf } from '../catalogue.js'
import { formOf } from '../controls/form.js'
import { foundDraft } from '../controls/found-draft.js'
import { input } from '../controls/input.js'
import { submit } from '../edits/queue.js'
import { swap, toScreen } from '../route.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

const text = words.sheet

/** @type {SizeGroup[]} */
const GROUPS = ['mains', 'crankpins', 'bores']

/** @param {JobView} view @param {SizeGroup} group */
const finishOf = ({ sheet }, group) => {
  const { surface = '', hone_angle = '', source = '' } = sheet.finishes?.find(({ of }) => of === group) ?? {}
  return { surface, hone_angle, source }
}

/** The line of the sheet that leads to it. @param {JobView} view */
export const toFinish = (view) => html`
  <li>
    <a class="row" href=${toScreen(view.job, 'sheet', 'finish')}>
      <span class="row-name">${text.finish}</span>
      <span class="row-facts">${text.gradeRows(view.sheet.finishes?.length ?? 0)}</span>
    </a>
  </li>`

/** @param {JobView} view */
export function finishSheet(view) {
  const { job } = view
  const form = formOf(`finish ${job}`, () => ({
    mains: finishOf(view, 'mains'), crankpins: finishOf(view, 'crankpins'), bores: finishOf(view, 'bores'),
  }))
  const { entered, refusal, enter, send } = form
  const save = async (/** @type {Event} */ event) => {
    event.preventDefault()
    const isSaved = await send((typed) => submit(
      job,
      ...GROUPS.map((of) => ({ do: /** @type {const} */ ('state-finish'), finish: { of, ...typed[of] } })),
    ))
    if (isSaved) swap(toScreen(job, 'sheet'))
  }
  /** @param {'mains' | 'crankpins' | 'bores'} group @param {'surface' | 'hone_angle' | 'source'} key */
  const field = (group, key) => input({
    id: `finish-${group}-${key}`,
    label: text.finishFields[key],
    value: entered[group][key],
    hint: key === 'hone_angle' ? text.honeAngleHint : '',
    enter: (typed) => enter({ [group]: { ...entered[group], [key]: typed } }),
  })
  return {
    title: text.finish,
    body: html`
      <p class="hint">${text.finishHint}</p>
      <form class="entry" id="finish" @submit=${save}>
        ${foundDraft(form)}
        ${(/** @type {const} */ (['mains', 'crankpins', 'bores'])).map((group) => html`
          <fieldset>
            <legend>${capitalised(sizeGroupOf(group).label)}</legend>
            ${field(group, 'surface')}${group === 'bores' ? field(group, 'hone_angle') : ''}${field(group, 'source')}
          </fieldset>`)}
        <p role="alert" class="refusal">${refusal}</p>
      </form>`,
    bar: html`
      <div class="bar">
        <a class="button" href=${toScreen(job, 'sheet')}>${text.toSheet}</a>
        <button class="primary" form="finish">${text.saveFinish}</button>
      </div>`,
  }
}
