// With large text, or over an open keyboard, the foot would leave no room for the screen. Then the title block scrolls
// with the screen, and the bars above it stay in sight; where not even they leave room, they scroll too.

/** Share of the window's height that the foot, or its bars alone, may keep for themselves in any case. */
const MOST = 0.5
/** Beyond that it must leave so much for the screen, in the reader's own text size. */
const LEAST_REM = 12

const footBars = () => /** @type {HTMLElement | null} */ (document.querySelector('.foot-bars'))
const titleBlock = () => /** @type {HTMLElement | null} */ (document.querySelector('.title-block'))

/** Settles which of the two it is. */
export function makeRoom() {
  const bars = footBars()?.offsetHeight ?? 0
  const height = bars + (titleBlock()?.offsetHeight ?? 0)
  const rem = parseFloat(getComputedStyle(document.documentElement).fontSize)
  const isTooHigh = !isBeside() && height > MOST * innerHeight && innerHeight - height < LEAST_REM * rem
  const areBarsTooHigh = isTooHigh && bars > MOST * innerHeight
  const page = document.documentElement
  // What has the keyboard is not hidden behind the bars.
  page.style.scrollPaddingBottom = isTooHigh && !areBarsTooHigh ? `${bars}px` : ''
  const before = page.className
  page.classList.toggle('flowing-bars', areBarsTooHigh)
  page.classList.toggle('flowing', isTooHigh)
  // What is typed into stays in sight.
  if (isTooHigh && page.className !== before) document.querySelector('.pad')?.scrollIntoView()
}

/** On a phone laid on its side the foot stands beside the screen, and takes none of its height. */
function isBeside() {
  const page = document.getElementById('app')
  return page !== null && getComputedStyle(page).flexDirection === 'row'
}

// In a frame of its own: what is watched changes its size by it.
const watch = new ResizeObserver(() => requestAnimationFrame(makeRoom))
addEventListener('resize', makeRoom)

/** Back to the head of the screen, where a changed screen is to be read from the beginning. */
export const toTop = () =>
  queueMicrotask(() => {
    document.querySelector('.screen-main')?.scrollTo(0, 0)
    document.querySelector('h1')?.focus({ preventScroll: true })
  })

/** Watches the foot from now on. */
export function keepRoom() {
  for (const part of [footBars(), titleBlock()]) if (part) watch.observe(part)
}
