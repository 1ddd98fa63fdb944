// A button that lets the person pick files or, where there is one, opens the camera.
import { html, nothing } from '../vendor/lit-html/lit-html.js'

/**
 * @param {object} button
 * @param {unknown} button.label
 * @param {string} [button.name] the same in full
 * @param {string} button.accept
 * @param {(files: File[]) => unknown} button.take
 * @param {boolean} [button.camera] open the camera that looks away from the person
 * @param {boolean} [button.multiple]
 * @param {boolean} [button.primary]
 * @param {string} [button.look] how else it looks
 */
export function fileButton({ label, name, accept, take, camera, multiple, primary, look = '' }) {
  /** @param {Event} event */
  const onChange = (event) => {
    const input = /** @type {HTMLInputElement} */ (event.target)
    const files = [...(input.files ?? [])]
    // Emptied, so that the same file can be picked again.
    input.value = ''
    if (files.length > 0) take(files)
  }
  return html`
    <label class=${`file-button ${primary ? 'primary' : ''} ${look}`}>
      <input type="file" accept=${accept} capture=${camera ? 'environment' : nothing} ?multiple=${multiple}
        aria-label=${name ?? nothing} @change=${onChange}>
      <span>${label}</span>
    </label>`
}
