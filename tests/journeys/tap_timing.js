// Times one tap: from the hand to the first painted frame that differs, and to the last one that follows from it.
(() => {
  const painted = (told) => requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => told(performance.now())
    port2.postMessage(0)
  })
  let tap = null
  // Nothing else moves on a page that nobody touches: a change in the frame of the tap is the tap's own.
  new MutationObserver(() => {
    const own = tap
    if (!own) return
    painted((at) => {
      own.first ??= at
      own.last = at
    })
  }).observe(document.documentElement, { subtree: true, childList: true, attributes: true, characterData: true })
  new PerformanceObserver((list) => list.getEntries().forEach(({ value }) => tap && (tap.shift += value)))
    .observe({ type: 'layout-shift' })
  // What the hand itself changes, such as the outline of what has the keyboard, comes before the click.
  addEventListener('click', ({ timeStamp }) => {
    tap = { start: timeStamp, first: null, last: null, shift: 0 }
  }, { capture: true })
  window.tapTimed = () => {
    if (!tap || tap.first === null || performance.now() - tap.last < 400) return null
    if (document.querySelector('.title-state')?.innerText.startsWith('Saving')) return null
    const { start, first, last, shift } = tap
    const asked = performance.getEntriesByType('resource').filter((entry) =>
      entry.name.includes('/act/') && entry.startTime >= start)
    const behind = asked.reduce((sum, { requestStart, responseEnd }) => sum + responseEnd - requestStart, 0)
    tap = null
    performance.clearResourceTimings()
    return [first - start, last - start, behind, shift]
  }
})()
