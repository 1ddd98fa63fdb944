// Runs before anything is drawn: the look and the text size as they were last set, so that the page does not start in
// others and change before one's eyes. What counts are the shop's settings (look.js).
try {
  const { look, size } = JSON.parse(localStorage.getItem('look') ?? '{}')
  document.documentElement.dataset.look = look ?? 'device'
  document.documentElement.style.fontSize = size ?? ''
} catch {
  // Without a memory the page starts as the device says.
}
