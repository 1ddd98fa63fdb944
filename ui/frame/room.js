// With large text, or over an open keyboard, the foot would leave no room for the screen. Then both scroll together.

/** Share of the window's height that the foot may keep for itself in any case. */
const MOST = 0.5
/** Beyond that it must leave so much for the screen, in the reader's own text size. */
const LEAST_REM = 12

const foot = () => document.querySelector('.foot')

function measure() {
  const height = foot()?.clientHeight ?? 0
  const rem = parseFloat(getComputedStyle(document.documentElement).fontSize)
  const isTooHigh = height > MOST * innerHeight && innerHeight - height < LEAST_REM * rem
  const page = document.documentElement.classList
  if (page.contains('flowing') === isTooHigh) return
  page.toggle('flowing', isTooHigh)
  // What is typed into stays in sight.
  if (isTooHigh) document.querySelector('.pad')?.scrollIntoView()
}

const watch = new ResizeObserver(measure)
addEventListener('resize', measure)

/** Back to the head of the screen, where a changed screen is to be read from the beginning. */
export const toTop = () =>
  queueMicrotask(() => {
    document.querySelector('.screen-main')?.scrollTo(0, 0)
    document.querySelector('h1')?.focus({ preventScroll: true })
  })

/** Watches the foot from now on. */
export function keepRoom() {
  const here = foot()
  if (here) watch.observe(here)
}
