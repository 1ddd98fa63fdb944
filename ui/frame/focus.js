// Where the keyboard goes when what had it is drawn no more: to what stood around it, so that the next Tab goes on from
// there and not from the top of the page.

/** @param {() => void} draw */
export function keepingFocus(draw) {
  const before = document.activeElement
  const around = outwards(before)
  draw()
  if (!before || before === document.body || before.isConnected) return
  const nearest = around.find((element) => element.isConnected)
  if (!nearest) return
  if (!nearest.hasAttribute('tabindex')) nearest.tabIndex = -1
  nearest.focus({ preventScroll: true })
}

/** What stands around an element, the nearest first. @param {Element | null} element @returns {HTMLElement[]} */
function outwards(element) {
  const around = []
  for (let next = element?.parentElement; next && next !== document.body; next = next.parentElement) around.push(next)
  return around
}
