// A file dropped beside the field for it would be opened in place of the page: it is left alone. What takes files
// listens itself.

export function keepDroppedOut() {
  for (const kind of ['dragover', 'drop']) {
    addEventListener(kind, (event) => {
      if (/** @type {DragEvent} */ (event).dataTransfer?.types.includes('Files')) event.preventDefault()
    })
  }
}
