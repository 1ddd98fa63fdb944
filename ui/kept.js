// Drafts that outlive the page, for the system may end it at any moment. Each is dropped once the store has it. They
// lie in the web view's database: what it has taken is there even if the whole program is killed right after. It takes
// its time, and forgets what is on its way when the page goes: that is noted where it is written at once.

/** @typedef {{ at: number, value: any }} Kept */

/** The number changes whenever the shape of a draft does: an older one is then not taken for one of now. */
const NAME = 'drafts 1'
const TABLE = 'drafts'
const ON_ITS_WAY = 'drafts on their way'
/** Beyond so many the oldest goes. A dozen jobs may be on the bench, and a dozen things half entered in each. */
const MOST = 200
/** Signs; what is longer lives as long as the page. */
const LONGEST = 20_000
/** The start must not wait for a database that does not answer. */
const PATIENCE = 1500

/** @type {Map<string, Kept>} */
const all = new Map()
/** What the database has not taken yet; null is for one that was dropped. @type {Map<string, Kept | null>} */
const onItsWay = new Map()
/** What was kept before the page began, and neither saved nor dropped since. @type {Set<string>} */
const found = new Set()
/** @type {IDBDatabase | null} */
let database = null

/** Reads what was kept, before anything is drawn. Where nothing can be kept, drafts live as long as the page. */
export const readKept = () =>
  Promise.race([
    open().catch((failure) => console.error(failure)),
    new Promise((go) => setTimeout(go, PATIENCE)),
  ])

/** @param {string} name @param {unknown} value */
export function keep(name, value) {
  const json = JSON.stringify(value)
  if (json.length > LONGEST) return
  const kept = { at: Date.now(), value: JSON.parse(json) }
  all.set(name, kept)
  write(name, kept)
  const oldestFirst = [...all].sort(([, a], [, b]) => a.at - b.at)
  oldestFirst.slice(0, Math.max(0, all.size - MOST)).forEach(([oldest]) => drop(oldest))
}

/** What was kept under this name, if anything. @param {string} name @returns {any} */
export const keptOf = (name) => all.get(name)?.value

/** Whether something was entered of a job before the page began, and neither saved nor dropped since.
 * @param {string} job */
export const isAnyFound = (job) => [...found].some((name) => name.split(' ').includes(job))

/** Of all that is kept. */
export const keptNames = () => [...all.keys()]

/** @param {string} name */
export function drop(name) {
  found.delete(name)
  if (all.delete(name)) write(name, null)
}

/** @param {string} name @param {Kept | null} kept */
function write(name, kept) {
  onItsWay.set(name, kept)
  try {
    const transaction = database?.transaction(TABLE, 'readwrite')
    if (!transaction) return
    const table = transaction.objectStore(TABLE)
    if (kept) table.put(kept, name)
    else table.delete(name)
    transaction.oncomplete = () => {
      if (onItsWay.get(name) === kept) onItsWay.delete(name)
    }
    transaction.commit()
  } catch (failure) {
    console.error(failure)
  }
}

addEventListener('pagehide', () => {
  if (onItsWay.size === 0) return
  try {
    localStorage.setItem(ON_ITS_WAY, JSON.stringify([...onItsWay]))
  } catch (failure) {
    console.error(failure)
  }
})

async function open() {
  const request = indexedDB.open(NAME, 1)
  request.onupgradeneeded = () => request.result.createObjectStore(TABLE)
  const opened = await answered(request)
  const table = opened.transaction(TABLE).objectStore(TABLE)
  const [names, rows] = await Promise.all([answered(table.getAllKeys()), answered(table.getAll())])
  const read = names.map((name, index) => /** @type {[string, Kept]} */ ([String(name), rows[index]]))
  // Where it answered late, what was kept in the meantime is newer.
  read.filter(([name]) => !onItsWay.has(name)).forEach(find)
  database = opened
  takeUp()
}

/** @param {[string, Kept]} own its name and itself */
function find([name, kept]) {
  all.set(name, kept)
  found.add(name)
}

/** What was on its way when the page went. */
function takeUp() {
  /** @type {[string, Kept | null][]} */
  const late = JSON.parse(localStorage.getItem(ON_ITS_WAY) ?? '[]')
  for (const [name, kept] of late.filter(([name]) => !onItsWay.has(name))) {
    if (kept) find([name, kept])
    else {
      all.delete(name)
      found.delete(name)
    }
    write(name, kept)
  }
  localStorage.removeItem(ON_ITS_WAY)
}

/** @template Result @param {IDBRequest<Result>} request @returns {Promise<Result>} */
const answered = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
