// Drafts that outlive the page, for the system may end it at any moment. Each is dropped once the store has it.

/** The number changes whenever the shape of a draft does: an older one is then not taken for one of now. */
const MARK = 'draft 1 '
/** Beyond so many the oldest goes. */
const MOST = 40
/** Signs; what is longer lives as long as the page. */
const LONGEST = 20_000

/** @param {string} name @param {unknown} value */
export function keep(name, value) {
  const json = JSON.stringify({ at: Date.now(), value })
  if (json.length > LONGEST) return
  try {
    localStorage.setItem(MARK + name, json)
    dropOldest()
  } catch (failure) {
    // Full, or not allowed here: the draft lives as long as the page.
    console.error(failure)
  }
}

/** What was kept under this name, if anything. @param {string} name @returns {any} */
export const keptOf = (name) => read(MARK + name)?.value

/** @param {string} name */
export function drop(name) {
  try {
    localStorage.removeItem(MARK + name)
  } catch (failure) {
    console.error(failure)
  }
}

function dropOldest() {
  const keys = Object.keys(localStorage).filter((key) => key.startsWith('draft '))
  if (keys.length <= MOST) return
  const at = (/** @type {string} */ key) => Number(read(key)?.at ?? 0)
  for (const key of keys.sort((a, b) => at(b) - at(a)).slice(MOST)) localStorage.removeItem(key)
}

/** @param {string} key @returns {{ at: number, value: any } | null} */
function read(key) {
  try {
    return JSON.parse(localStorage.getItem(key) ?? 'null')
  } catch (failure) {
    console.error(failure)
    return null
  }
}
