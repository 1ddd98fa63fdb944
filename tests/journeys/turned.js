// What keeps a page from being used on a small screen turned on its side or with large letters, a sentence each.

/** The least that a thumb hits, with what rounding takes. */
const TARGET = 47.5
/** The share of the height that bars may take where they lie below the screen. */
const MOST = 0.4

function faults() {
  return [...tooWide(), ...barsOutOfReach(), ...smallTargets()]
}

const isSeen = (element) => element.getClientRects().length > 0 && element.checkVisibility({ checkVisibilityCSS: true })
const seen = (selector) => [...document.querySelectorAll(selector)].filter(isSeen)
function named(element) {
  const words = (element.ariaLabel ?? element.textContent).replace(/\s+/g, ' ').trim()
  return `${element.tagName.toLowerCase()} “${words.slice(0, 60)}”`
}

function tooWide() {
  // The window's own width grows on a phone with what is wider.
  const page = document.documentElement
  const wide = seen('.screen-main, .beside, .foot').filter((box) => box.scrollWidth > box.clientWidth + 1)
  return [
    ...(page.scrollWidth > page.clientWidth ? [`the page is ${page.scrollWidth} wide, of ${page.clientWidth}`] : []),
    ...wide.map((box) => `what stands in .${box.className} is ${box.scrollWidth} wide, of ${box.clientWidth}`),
  ]
}

function barsOutOfReach() {
  const isBeside = getComputedStyle(document.getElementById('app')).flexDirection === 'row'
  const height = isBeside ? 0 : seen('.foot .bar').reduce((sum, bar) => sum + bar.offsetHeight, 0)
  const away = seen('.foot .bar').map((bar) => bar.getBoundingClientRect())
    .filter(({ top, bottom }) => top < -1 || bottom > innerHeight + 1)
  return [
    ...(height > MOST * innerHeight ? [`the bars are ${height} high, of ${innerHeight}`] : []),
    ...away.map(({ top, bottom }) => `a bar lies from ${Math.round(top)} to ${Math.round(bottom)}, of ${innerHeight}`),
  ]
}

function smallTargets() {
  const controls = seen('a[href], button, summary, input, select, textarea')
  return controls.filter((control) => !isAside(control)).flatMap((control) => {
    const label = control.matches('[type=radio], [type=checkbox], [type=file]') ? control.closest('label') : null
    const { width, height } = (label ?? control).getBoundingClientRect()
    const isSmall = width < TARGET || height < TARGET
    return isSmall ? [`${named(control)} is ${width.toFixed(1)} by ${height.toFixed(1)}`] : []
  })
}

/** A link within a sentence, and what is seen only while it has the keyboard. */
function isAside(control) {
  if (control.closest('.skip')) return true
  const isWithin = control.parentElement.textContent.trim().length > control.textContent.trim().length + 2
  return control.tagName === 'A' && getComputedStyle(control).display === 'inline' && isWithin
}
