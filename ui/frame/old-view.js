// Runs before everything else, in the oldest words that a web view may know: one that lacks what the page needs gets a
// sentence in its place (index.html), and the page is not started (main.js).
(function () {
  /** What the styles need, each known from about the same year on. */
  var needed = ['selector(:has(*))', '(container-type: inline-size)', '(width: 1cqw)', '(height: 100dvh)']

  function isTooOld() {
    if (!('noModule' in document.createElement('script'))) return true
    if (!window.CSS || !CSS.supports || !('CSSLayerBlockRule' in window)) return true
    for (var nth = 0; nth < needed.length; nth += 1) {
      if (!CSS.supports(needed[nth] || '')) return true
    }
    // The youngest of all: bounds that are written as a comparison.
    if (!matchMedia('(width >= 1px)').matches) return true
    if (!('HTMLDialogElement' in window) || !('ResizeObserver' in window)) return true
    return !Array.prototype.at || !String.prototype.replaceAll
  }

  if (!isTooOld()) return
  document.documentElement.setAttribute('data-too-old', '')
  document.addEventListener('DOMContentLoaded', function () {
    var sentence = document.getElementById('too-old')
    if (sentence) sentence.hidden = false
  })
})()
