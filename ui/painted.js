// What need not be done before a tap is seen is done after it: a request and a step in the history each take a slow
// phone longer than drawing does. What is half entered is no such thing: it is kept at once, for the program may be
// killed.

/** So long at most. */
const PATIENCE = 100

/** Who waits. @type {Set<() => void>} */
const waiting = new Set()

/** Once all that is drawn now has been painted; at once where nothing is, for the page is out of sight.
 * @returns {Promise<void>} */
export const painted = () =>
  new Promise((go) => {
    const done = () => {
      clearTimeout(timer)
      waiting.delete(done)
      go()
    }
    const timer = setTimeout(done, PATIENCE)
    waiting.add(done)
    if (document.hidden) return done()
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel()
      port1.onmessage = done
      port2.postMessage(null)
    })
  })

/** The system may end a page that goes out of sight. */
addEventListener('visibilitychange', () => document.hidden && waiting.forEach((done) => done()))
addEventListener('pagehide', () => waiting.forEach((done) => done()))
