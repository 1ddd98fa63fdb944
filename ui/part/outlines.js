// Views of the parts that stand above their fields, so that it is plain which side is which.
import { html } from '../vendor/lit-html/lit-html.js'

/** @param {string} lines */
const view = (lines) => html`
  <svg class="outline" viewBox="0 0 300 60" aria-hidden="true" focusable="false"><path d=${lines}/></svg>`

/** @type {Record<string, unknown>} */
export const outlines = {
  // The shell seen from its end: parting edges left and right, crown in the middle.
  shell: view('M60 56A90 48 0 0 1 240 56M84 56A66 34 0 0 1 216 56M60 56H84M216 56H240M150 2V60'),
  // The bore seen from above, with the two sides that the rod presses against.
  bore: view('M150 6A24 24 0 1 0 150 54A24 24 0 1 0 150 6M110 30H190M150 0V60'),
  // The thrust ring seen from its side.
  'thrust-face':
    view('M150 6A24 24 0 1 0 150 54A24 24 0 1 0 150 6M150 17A13 13 0 1 0 150 43A13 13 0 1 0 150 17M100 30H200'),
  // The lobe seen from its end, nose up.
  lobe: view('M150 4C162 4 164 16 168 28A20 20 0 1 1 132 28C136 16 138 4 150 4M110 36H190M150 0V60'),
  // The tappet seen from its side, foot down.
  tappet: view('M138 4H162V44H176V56H124V44H138ZM150 0V60M138 12H162'),
  // The piston seen from its side.
  piston: view('M116 4H184V56H168V46H132V56H116ZM116 12H184M116 19H184M116 26H184M150 0V60'),
  // The journal between its webs.
  journal: view('M90 4V56M110 4V56M190 4V56M210 4V56M110 14H190M110 46H190M70 30H230'),
}
