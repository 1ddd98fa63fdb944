// With large text, or over an open keyboard, the foot would leave no room for the sheet. Then both scroll together.

/** Share of the window's height that the foot may keep for itself. */
const MOST = 0.6

const foot = () => document.querySelector('.foot')

function measure() {
  const isTooHigh = (foot()?.clientHeight ?? 0) > MOST * innerHeight
  document.documentElement.classList.toggle('flowing', isTooHigh)
}

const watch = new ResizeObserver(measure)
addEventListener('resize', measure)

/** Watches the foot from now on. */
export function keepRoom() {
  const here = foot()
  if (here) watch.observe(here)
}
