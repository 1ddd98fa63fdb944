// What the Tab key leads to is seen whole. A browser leaves as it stands what it sees a part of: half a button at the
// edge of a line that is drawn sideways, or a box of text behind the foot.

let isByTab = false

/** Watches the keyboard from now on. */
export function keepInSight() {
  // Whatever moves the focus otherwise has its own place in mind.
  addEventListener('keydown', ({ key }) => {
    isByTab = key === 'Tab'
  }, { capture: true })
  addEventListener('focusin', ({ target }) => {
    if (!isByTab || !(target instanceof Element)) return
    if (!target.matches('a, button, summary, input, select, textarea')) return
    const whole = target.closest('label') ?? target
    whole.scrollIntoView({ block: 'nearest', inline: 'nearest' })
  })
}
