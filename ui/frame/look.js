// The look and the text size that the shop has chosen, over those of the device.
/** @import { Settings } from '../types/api.d.ts' */

/** The colours of the system's bars above and below the page, as the device's look has them. */
const themes = /** @type {HTMLMetaElement[]} */ ([...document.querySelectorAll('meta[name=theme-color]')])
  .map((meta) => ({ meta, own: meta.content }))

/** @param {Pick<Settings, 'look' | 'text_size'>} settings */
export function showLook({ look, text_size }) {
  const page = document.documentElement
  page.dataset.look = look
  page.style.fontSize = ''
  // From the device's own size, which a per cent would pass over on iOS.
  if (text_size !== 100) page.style.fontSize = `${(parseFloat(getComputedStyle(page).fontSize) * text_size) / 100}px`
  const edge = getComputedStyle(page).getPropertyValue('--paper-edge').trim()
  for (const { meta, own } of themes) meta.content = look === 'device' ? own : edge
  try {
    localStorage.setItem('look', JSON.stringify({ look, size: page.style.fontSize }))
  } catch {
    // The next start then shows the device's look for a moment.
  }
}
