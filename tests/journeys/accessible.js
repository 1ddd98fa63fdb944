// Finds things in a page as a person is told of them: by role and name. A small part of the rules of WAI-ARIA, enough
// for our own page; it reads nothing that assistive techniques would not read too.

const ROLES = {
  A: (element) => (element.hasAttribute('href') ? 'link' : ''),
  BUTTON: () => 'button',
  FIELDSET: () => 'group',
  IMG: () => 'img',
  LI: () => 'listitem',
  SELECT: () => 'combobox',
  SUMMARY: () => 'button',
  TEXTAREA: () => 'textbox',
  INPUT: ({ type }) => ({ radio: 'radio', checkbox: 'checkbox', file: 'file', number: 'spinbutton' })[type] ?? 'textbox',
}

function roleOf(element) {
  if (/^H[1-6]$/.test(element.tagName)) return 'heading'
  return element.getAttribute('role') ?? ROLES[element.tagName]?.(element) ?? ''
}

function nameOf(element) {
  const labelledBy = element.getAttribute('aria-labelledby')
  if (labelledBy) return collapsed(labelledBy.split(' ').map((id) => textOf(document.getElementById(id))).join(' '))
  const label = element.getAttribute('aria-label') ?? element.getAttribute('alt')
  if (label !== null) return collapsed(label)
  if (element.tagName === 'FIELDSET') return collapsed(textOf(element.querySelector('legend')))
  if (element.labels?.length) return collapsed([...element.labels].map(textOf).join(' '))
  return collapsed(textOf(element))
}

const collapsed = (text) => text.replace(/\s+/g, ' ').trim()

function textOf(node) {
  if (!node) return ''
  if (node.nodeType === Node.TEXT_NODE) return node.data
  if (node.nodeType !== Node.ELEMENT_NODE || node.getAttribute('aria-hidden') === 'true') return ''
  if (/^(TEXTAREA|SELECT|SCRIPT|STYLE)$/.test(node.tagName)) return ''
  if (node.tagName === 'IMG') return node.alt
  const text = [...node.childNodes].map(textOf).join('')
  return getComputedStyle(node).display === 'inline' ? text : ` ${text} `
}

// A name that ends in “…” matches whatever goes on from there.
const matches = (name, wanted) => (wanted.endsWith('…') ? name.startsWith(wanted.slice(0, -1)) : name === wanted)

// What is folded away has a place, but is not to be seen.
const isShown = (element) =>
  element.getClientRects().length > 0 && element.checkVisibility() && getComputedStyle(element).visibility === 'visible'

// What a person would touch: a control that is drawn by its label has no area of its own.
function touchable(element) {
  const { width, height } = element.getBoundingClientRect()
  const isDrawn = width > 2 && height > 2 && getComputedStyle(element).opacity !== '0'
  return isDrawn ? element : (element.labels?.[0] ?? element)
}

function find(role, name, group) {
  const root = group ? find('group', group) : document.body
  if (!root) return null
  return [...root.querySelectorAll('*')].find(
    (element) => roleOf(element) === role && matches(nameOf(element), name) && isShown(touchable(element)),
  ) ?? null
}

function toTouch(role, name, group) {
  const found = find(role, name, group)
  if (!found) return null
  const target = touchable(found)
  // In the middle, clear of the bar at the foot.
  target.scrollIntoView({ block: 'center', behavior: 'instant' })
  return target
}

// How many times the thumb scrolls before it is there: not at all where its middle stands between head and foot.
function scrollsTo(role, name, group) {
  const found = find(role, name, group)
  if (!found) return null
  const target = touchable(found)
  if (target.closest('.foot')) return 0
  const { top, bottom } = target.getBoundingClientRect()
  const [middle, foot] = [(top + bottom) / 2, document.querySelector('.foot').getBoundingClientRect().top]
  const away = middle < 0 ? -middle : Math.max(0, middle - foot)
  return Math.ceil(away / foot)
}

function focused() {
  const element = document.activeElement
  const group = element.closest('fieldset, [role=group]')
  return { role: roleOf(element), name: nameOf(element), group: group ? nameOf(group) : '' }
}
