// Drafts that outlive the page, for the system may end it at any moment. Each is dropped once the store has it. They
// lie in the web view's database: what it has taken is there even if the whole program is killed right after.

/** @typedef {{ at: number, value: any }} Kept */

/** The number changes whenever the shape of a draft does: an older one is then not taken for one of now. */
const NAME = 'drafts 1'
const TABLE = 'drafts'
/** Beyond so many the oldest goes. */
const MOST = 40
/** Signs; what is longer lives as long as the page. */
const LONGEST = 20_000
/** The start must not wait for a database that does not answer. */
const PATIENCE = 1500

/** @type {Map<string, Kept>} */
const all = new Map()
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
  write((table) => table.put(kept, name))
  const oldestFirst = [...all].sort(([, a], [, b]) => a.at - b.at)
  oldestFirst.slice(0, Math.max(0, all.size - MOST)).forEach(([oldest]) => drop(oldest))
}

/** What was kept under this name, if anything. @param {string} name @returns {any} */
export const keptOf = (name) => all.get(name)?.value

/** @param {string} name */
export function drop(name) {
  if (all.delete(name)) write((table) => table.delete(name))
}

/** @param {(table: IDBObjectStore) => void} change */
function write(change) {
  try {
    const transaction = database?.transaction(TABLE, 'readwrite')
    if (!transaction) return
    change(transaction.objectStore(TABLE))
    // Else it would be given up with the page.
    transaction.commit()
  } catch (failure) {
    console.error(failure)
  }
}

async function open() {
  const request = indexedDB.open(NAME, 1)
  request.onupgradeneeded = () => request.result.createObjectStore(TABLE)
  const opened = await answered(request)
  const table = opened.transaction(TABLE).objectStore(TABLE)
  const [names, rows] = await Promise.all([answered(table.getAllKeys()), answered(table.getAll())])
  names.forEach((name, index) => all.set(String(name), rows[index]))
  database = opened
}

/** @template Result @param {IDBRequest<Result>} request @returns {Promise<Result>} */
const answered = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
