// How papers leave the shop: saved as a file, opened in the system's viewer, copied as text.
/** @import { Document } from './types/api.d.ts' */
/** @import { Selection } from './backend.js' */
import { openDocument, saveArchive, saveDocument, shareDocument } from './backend.js'
import { settled } from './edits/queue.js'
import { underWay } from './frame/under-way.js'
import { attempt, state } from './state.js'
import { words } from './words.js'

const text = words.handOver

/** Documents hold what is saved, so what is on its way goes first.
 * @param {(way: number) => Promise<string>} task answers a sentence */
export const leave = (task) =>
  attempt(async () => {
    // Straight from the tap, if nothing is on its way: some systems open a sheet only then.
    if (state.waiting.length > 0) await settled()
    const told = await underWay(task)
    if (told !== null) state.notice = told
  })

/** Saves a paper, on the shop's size of paper; answers whether it was saved.
 * @param {string} job @param {Document} document @param {Selection} [selection] */
export async function savePaper(job, document, selection) {
  let saved = ''
  await leave(async (way) => {
    saved = await saveDocument(job, document, { paper: state.settings.paper, ...selection, way })
    return text.savedAs(saved)
  })
  return saved !== ''
}

/** Saves the whole job; answers whether it was saved, and all of it. What could not be saved with it is told until the
 * next screen. @param {string} job */
export async function saveWholeJob(job) {
  let [isSaved, isWhole] = [false, false]
  await leave(async (way) => {
    const { saved, leftOut } = await saveArchive(job, way)
    isSaved = saved !== ''
    isWhole = isSaved && leftOut === 0
    if (leftOut > 0) state.alert = text.photosLeftOut(leftOut)
    return text.savedAs(saved)
  })
  return { isSaved, isWhole }
}

/** Hands a paper to the system's share sheet, on the shop's size of paper; answers whether it went.
 * @param {string} job @param {Document} document @param {string} name the file's name @param {Selection} [selection] */
export async function sharePaper(job, document, name, selection) {
  let isShared = false
  await leave(async (way) => {
    isShared = await shareDocument(job, document, { paper: state.settings.paper, ...selection, way }, name)
    return isShared ? text.shared : text.notShared
  })
  return isShared
}

/** The same with what is no paper.
 * @param {(way: number) => Promise<boolean>} share answers whether it went */
export const shareOther = (share) => leave(async (way) => ((await share(way)) ? text.shared : text.notShared))

/** Opens a paper, on the shop's size of paper; answers whether it did.
 * @param {string} job @param {Document} document @param {Selection} [selection] */
export const openPaper = (job, document, selection) =>
  leave(async (way) => {
    await openDocument(job, document, { paper: state.settings.paper, ...selection, way })
    return ''
  })

/** Copies what a text box on the screen holds. Some systems refuse the clipboard to a page; then the text is marked for
 * the person. @param {string} box selects the text box */
export const copyFrom = (box) =>
  attempt(async () => {
    const area = document.querySelector(box)
    const isCopied = area instanceof HTMLTextAreaElement && (await onClipboard(area))
    state.notice = isCopied ? text.copied : text.notCopied
  })

/** @param {HTMLTextAreaElement} area */
async function onClipboard(area) {
  try {
    await navigator.clipboard.writeText(area.value)
    return true
  } catch {
    area.focus()
    area.select()
    return document.execCommand('copy')
  }
}
