// The only file that knows who is behind the page: Tauri's commands, or the HTTP harness of the browser tests.
/** @import { Actions, Can, Change, Document, Extent, Imported, Instrument, LabelStock } from './types/api.d.ts' */
/** @import { ListKind } from './types/api.d.ts' */
/** @import { KeepAwake, PaperSize, Photographed, Pieces, PriceList, Purpose, Settings } from './types/api.d.ts' */
/** @import { Share, Shared, Sheet, TakePhoto } from './types/api.d.ts' */
import { convertFileSrc, invoke, isTauri } from './vendor/tauri/core.js'
import { words } from './words.js'

const inShell = isTauri()
const isAndroid = /Android/.test(navigator.userAgent)
const isIos = /iPhone|iPad|iPod/.test(navigator.userAgent)

/** What the surroundings can do, so that the screens offer nothing that fails. */
export const surroundings = {
  /** A camera stands behind `<input capture>`. */
  hasCamera: isAndroid || isIos || matchMedia('(pointer: coarse)').matches,
  /** A document can be opened in the system's viewer. */
  opensDocuments: inShell && !isAndroid && !isIos,
  /** A folder can be chosen. */
  choosesFolders: inShell && !isAndroid && !isIos,
  /** Files can be handed to the system's share sheet. Where nothing can, they are saved. */
  sharesFiles: canShareFiles(),
  /** What the device itself does for us. @type {Can} */
  phone: { take_photo: false, share: false, keep_awake: false, tick: false },
  /** What a gallery input accepts: iOS turns its own format into JPEG only when nothing else is accepted. */
  galleryAccepts: isIos ? 'image/jpeg' : 'image/*',
}

/** An action was refused or broke; the message is a sentence for the person. */
export class Refusal extends Error {
  /** @param {string} code @param {string} message */
  constructor(code, message) {
    super(message)
    this.code = code
  }
}

/** Finds out what the device does for us: nothing, where it does not answer. */
export async function readPhone() {
  try {
    surroundings.phone = await device('can', {})
    surroundings.sharesFiles ||= surroundings.phone.share
  } catch (failure) {
    console.error(failure)
  }
}

export const getCatalogue = () => act('catalogue', {})
/** Those of which every word was typed somewhere, so many of them at most.
 * @param {{ find?: string, finished?: boolean, most?: number }} asked finished: closed ones too, not only counted */
export const listJobs = (asked) => act('job_list', asked)
/** The jobs in which the same engine was here before. @param {string} job */
export const listEarlier = (job) => act('job_earlier', { job })
export const createJob = () => act('job_create', {})
/** A job to look around in. @param {number} way by which to ask how far it is */
export const makeDemo = (way) => act('job_demo', { way })
/** @param {string} job */
export const openJob = (job) => act('job_open', { job })
/** @param {string} job */
export const getHistory = (job) => act('job_history', { job })
/** @param {string} job */
export const getNextLook = (job) => act('job_next_look', { job })
/** @param {string} job @param {Change[]} changes */
export const appendEdits = (job, changes) => act('edits_append', { job, changes })
/** @param {string} job @param {string} part @param {Blob} picture */
export const addPhoto = (job, part, picture) => act('photo_add', { job, part }, picture)
/** Of something that came with the engine. @param {string} job @param {string} ancillary @param {Blob} picture */
export const addAncillaryPhoto = (job, ancillary, picture) => act('photo_add', { job, ancillary }, picture)
/** Notes of what the camera is about to take a photo.
 * @param {{ job: string, part?: string, ancillary?: string }} of */
export const beginShot = (of) => act('shot_begin', of)
/** Opens the camera for a shot, and answers once it has closed. @param {string} shot */
export async function takePhoto(shot) {
  try {
    return await device('take_photo', { shot })
  } catch (failure) {
    // There is none: the web view's own way is offered from now on.
    if (failure instanceof Refusal && failure.code === 'no-camera') surroundings.phone.take_photo = false
    throw failure
  }
}
/** Photos that the camera was asked for and that are in no job yet. */
export const listShots = () => act('shot_list', {})
/** Says that the camera has closed, for when it could not tell so itself. @param {string} shot */
export const endShot = (shot) => act('shot_end', { shot })
/** Puts away a photo for good. @param {string} shot */
export const dropShot = (shot) => act('shot_drop', { shot })
/** Takes a photo into its job by its file. @param {string} shot */
export const takeInPhoto = (shot) => act('photo_take_in', { shot })
/** Keeps the screen lit, or no longer. @param {boolean} on */
export const keepAwake = (on) => device('keep_awake', { on })
/** A tick that the hand feels. */
export const tick = () => device('tick', {})
/** So much of a file is handed over at once, in bytes: a whole one may be larger than the page's memory. */
const PIECE = 4 * 1024 * 1024

/** Hands a file over; answers the number by which it goes until it is taken in.
 * @param {File} file @param {() => boolean} isStopping */
export async function sendFile(file, isStopping) {
  const { arrival } = await act('arrival_begin', { name: file.name })
  for (let at = 0; at === 0 || at < file.size; at += PIECE) {
    if (isStopping()) {
      await dropArrival(arrival)
      throw new Refusal('stopped', words.frame.stopped)
    }
    await act('arrival_add', { arrival, at }, file.slice(at, at + PIECE))
  }
  return arrival
}
/** Files that another program has opened with this one. */
export const listArrivals = () => act('arrival_list', {})
/** One that is not wanted. @param {number} arrival */
export const dropArrival = (arrival) => act('arrival_drop', { arrival })
/** @param {number} arrival @param {number} way by which to ask how far it is
 * @param {boolean} back whether a job that was put away is to come back */
export const importArchive = (arrival, way, back) => act('archive_import', { arrival, way, back })
/** That the archive which was saved last is kept: the job may be put away until it is changed. @param {string} job */
export const keptArchive = (job) => act('archive_kept', { job })
/** Out of the lists, and gone after 30 days. @param {string} job */
export const putAwayJob = (job) => act('job_put_away', { job })
/** @param {string} job */
export const bringBackJob = (job) => act('job_bring_back', { job })
/** Those that can still be brought back. */
export const listAway = () => act('job_away', {})
/** How far something is; nothing once it is over. @param {number} way */
export const getSteps = (way) => act('way_get', { way })
/** Ends something that is no longer wanted. @param {number} way */
export const stopWay = (way) => act('way_stop', { way })
/** Where a label leads, by its code as it was typed. @param {string} text */
export const findLabel = (text) => act('label_find', { text })
/** The same, read from a photo of it. @param {Blob} picture */
export const readLabel = (picture) => act('label_read', {}, picture)
export const getSettings = () => act('settings_get', {})
/** @param {Settings} settings */
export const setSettings = (settings) => act('settings_set', { settings })
/** What the shop keeps from job to job. */
export const getShelf = () => act('shelf_get', {})
/** One of the same id is replaced. @param {Instrument} instrument */
export const keepInstrument = (instrument) => act('instrument_keep', { instrument })
/** @param {string} id */
export const dropInstrument = (id) => act('instrument_drop', { id })
/** One of the same name is replaced. @param {Sheet} sheet */
export const keepSheet = (sheet) => act('sheet_keep', { sheet })
/** @param {string} name */
export const dropSheet = (name) => act('sheet_drop', { name })
/** @param {Blob} file */
export const importSheet = (file) => act('sheet_import', {}, file)
/** The whole list, in place of the one before. @param {PriceList} prices */
export const keepPrices = (prices) => act('prices_keep', { prices })
/** What was charged in earlier jobs. */
export const getLearntPrices = () => act('prices_learnt', {})

/** The address of a picture. @param {string} photo @param {'thumb' | 'screen'} size */
export function photoAddress(photo, size) {
  // A picture that is still being saved is shown from memory.
  if (photo.startsWith('blob:')) return photo
  return inShell ? `${convertFileSrc('', 'photo')}${size}/${photo}` : `/photo/${size}/${photo}`
}

/** Which of a kind of paper, and how.
 * @typedef {object} Selection
 * @property {Extent} [extent]
 * @property {ListKind} [list]
 * @property {LabelStock} [stock]
 * @property {Pieces} [pieces] of labels: of which
 * @property {number} [field] of labels on sheets: the first that is free
 * @property {PaperSize} [paper]
 * @property {Purpose} [purpose]
 * @property {number} [way] by which to ask how far it is
 */

/** A paper that is plain text. @param {string} job @param {Document} document @param {Selection} [selection] */
export async function getText(job, document, selection) {
  const { bytes } = await actForBytes('document_get', { job, document, ...selection })
  return new TextDecoder().decode(bytes)
}

/** Saves a paper; answers where, or nothing when the person changed their mind.
 * @param {string} job @param {Document} document @param {Selection} [selection] */
export async function saveDocument(job, document, selection) {
  if (!inShell) return download('document_get', { job, document, ...selection })
  return savedPath(await command('document_save', { job, document, ...selection }))
}

/** Hands a paper to the system's share sheet: mail, messages, a printer. Answers whether the person went through with
 * it.
 * @param {string} job @param {Document} document @param {Selection} selection @param {string} name the file's name */
export async function shareDocument(job, document, selection, name) {
  if (surroundings.phone.share) {
    const title = name.replace(/\.\w+$/, '')
    return handOver({ files: [{ by: 'document_get', with: { job, document, ...selection } }], title, text: '' })
  }
  const { bytes } = await actForBytes('document_get', { job, document, ...selection })
  const type = name.endsWith('.pdf') ? 'application/pdf' : name.endsWith('.csv') ? 'text/csv' : 'text/plain'
  try {
    // Some systems drop the file when a text is handed over with it.
    await navigator.share({ files: [new File([bytes], name, { type })] })
    return true
  } catch (failure) {
    if (failure instanceof DOMException && failure.name === 'AbortError') return false
    console.error(failure)
    throw new Refusal('not-shared', words.errors.notShared)
  }
}

/** Hands the whole job to the system's share sheet; answers whether the person went through with it.
 * @param {string} job @param {string} title @param {number} way @param {boolean} give_away with cleaned pictures */
export const shareArchive = (job, title, way, give_away) =>
  handOver({ files: [{ by: 'archive_export', with: { job, way, give_away } }], title, text: '' })

/** The same with words alone. @param {string} text @param {string} title */
export const shareText = (text, title) => handOver({ files: [], title, text })

/** @param {Share} parcel */
async function handOver(parcel) {
  try {
    return (await device('share', parcel)) === 'handed-over'
  } catch (failure) {
    // There is nothing to share with: what is left is to save and to copy.
    if (failure instanceof Refusal && failure.code === 'no-share') {
      surroundings.phone.share = false
      surroundings.sharesFiles = canShareFiles()
    }
    throw failure
  }
}

/** Opens a paper in the system's viewer.
 * @param {string} job @param {Document} document @param {Selection} [selection] */
export const openDocument = (job, document, selection) => command('document_open', { job, document, ...selection })

/** Saves a spec sheet of the shelf as a file. @param {string} name */
export async function saveSheet(name) {
  if (!inShell) return download('sheet_export', { name })
  return savedPath(await command('sheet_save', { name }))
}

/** A job with pictures that say neither where they were taken nor with which camera; answers where it was saved.
 * @param {string} job @param {number} way */
export async function saveToGiveAway(job, way) {
  const asked = { job, way, give_away: true }
  return inShell ? savedPath(await command('archive_save', asked)) : download('archive_export', asked)
}

/** Where backups go, and how the last one went. */
export const getBackup = () => act('backup_get', {})
/** @param {number} way by which to ask how far it is */
export const makeBackup = (way) => act('backup_make', { way })
export const forgetBackup = () => act('backup_forget', {})
/** Asks the person for the folder; answers whether one was chosen. @returns {Promise<boolean>} */
export const chooseBackup = () => command('backup_choose', {})
/** Asks the person for a folder, and takes in what lies in it; nothing when they changed their mind.
 * @param {number} way @returns {Promise<Imported | null>} */
export const restoreBackups = (way) => command('backup_restore', { way })

/** Saves the whole shop as one file; answers where, or nothing when the person changed their mind.
 * @param {number} way */
export async function saveShop(way) {
  return inShell ? savedPath(await command('shop_save', { way })) : download('shop_export', { way })
}

/** Hands the whole shop to the system's share sheet; answers whether the person went through with it.
 * @param {number} way */
export const shareShop = (way) =>
  handOver({ files: [{ by: 'shop_export', with: { way } }], title: words.app, text: '' })

/** Saves the whole job with its photos as one file; answers where, and how many photos can't be read and are not in it.
 * @param {string} job @param {number} way */
export async function saveArchive(job, way) {
  const saved = inShell
    ? savedPath(await command('archive_save', { job, way }))
    : await download('archive_export', { job, way })
  const leftOut = saved ? (await keptArchive(job)).left_out : 0
  return { saved, leftOut }
}

/** Android's web view has no share sheet, iOS's has; a desktop's browser may have one. */
function canShareFiles() {
  const probe = new File([''], 'probe.pdf', { type: 'application/pdf' })
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [probe] })
}

/** @param {{ path?: string } | string | null} answer */
const savedPath = (answer) => (typeof answer === 'string' ? answer : (answer?.path ?? ''))

/** An action that takes and answers JSON; some take bytes besides.
 * @template {keyof Actions} Name @param {Name} name @param {Actions[Name]['arguments']} args @param {Blob} [bytes]
 * @returns {Promise<Actions[Name]['reply']>} */
const act = async (name, args, bytes) => (inShell ? command(name, args, bytes) : (await post(name, args, bytes)).json())

/** What the shell does: an action, or what only a shell can.
 * @param {string} name @param {object} args @param {Blob} [bytes] @returns {Promise<any>} */
async function command(name, args, bytes) {
  try {
    return bytes ? await invokeWithBytes(name, args, bytes) : await invoke(name, { arguments: args })
  } catch (failure) {
    throw refusal(failure)
  }
}

/** @param {string} name @param {object} args @param {Blob} bytes */
async function invokeWithBytes(name, args, bytes) {
  // Android hands no raw bodies to the shell.
  if (isAndroid) return invoke(name, { arguments: args, base64: await base64(bytes) })
  const headers = { 'x-arguments': encodeURIComponent(JSON.stringify(args)) }
  return invoke(name, new Uint8Array(await bytes.arrayBuffer()), { headers })
}

/** What the device is asked, and what it answers.
 * @typedef {object} Device
 * @property {{ arguments: Record<string, never>, reply: Can }} can
 * @property {{ arguments: TakePhoto, reply: Photographed }} take_photo
 * @property {{ arguments: Share, reply: Shared }} share
 * @property {{ arguments: KeepAwake, reply: null }} keep_awake
 * @property {{ arguments: Record<string, never>, reply: null }} tick */

/** @template {keyof Device} Name @param {Name} name @param {Device[Name]['arguments']} args
 * @returns {Promise<Device[Name]['reply']>} */
async function device(name, args) {
  if (inShell) return command(`plugin:wearbook-phone|${name}`, args)
  return (await post(name, args, undefined, '/phone')).json()
}

/** @param {Blob} bytes @returns {Promise<string>} */
function base64(bytes) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader()
    reader.onload = () => resolve(String(reader.result).replace(/^[^,]*,/, ''))
    reader.onerror = () => reject(reader.error)
    reader.readAsDataURL(bytes)
  })
}

/** The actions that answer bytes.
 * @typedef {{ [Name in keyof Actions]: Actions[Name]['reply'] extends Blob ? Name : never }[keyof Actions]} GivesBytes
 * */

/** @template {GivesBytes} Name @param {Name} name @param {Actions[Name]['arguments']} args
 * @returns {Promise<{ bytes: ArrayBuffer, fileName: string }>} */
async function actForBytes(name, args) {
  if (inShell) return { bytes: await command(name, args), fileName: '' }
  const response = await post(name, args)
  const fileName = decodeURIComponent(response.headers.get('x-file-name') ?? '')
  return { bytes: await response.arrayBuffer(), fileName }
}

/** @param {string} name @param {object} args @param {Blob} [bytes] @param {string} [to] */
async function post(name, args, bytes, to = '/act') {
  const json = JSON.stringify(args)
  /** @type {RequestInit} */
  const request = bytes
    ? { body: bytes, headers: { 'x-arguments': encodeURIComponent(json), 'content-type': 'application/octet-stream' } }
    : { body: json, headers: { 'content-type': 'application/json' } }
  const response = await fetch(`${to}/${name}`, { method: 'POST', ...request }).catch((failure) => {
    throw refusal(failure)
  })
  if (!response.ok) throw refusal(await response.json().catch(() => null))
  return response
}

/** @param {any} failure */
function refusal(failure) {
  if (failure?.code && failure?.message) return new Refusal(failure.code, failure.message)
  console.error(failure)
  return new Refusal('broke', words.errors.broke)
}

/** Hands bytes to the browser as a file.
 * @template {GivesBytes} Name @param {Name} name @param {Actions[Name]['arguments']} args */
async function download(name, args) {
  const { bytes, fileName } = await actForBytes(name, args)
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([bytes]))
  link.download = fileName
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000)
  return fileName
}
