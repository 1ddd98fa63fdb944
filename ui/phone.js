// What the device does while the hands are busy: its screen stays lit, and the thumb feels what was taken.
import { keepAwake, surroundings, tick } from './backend.js'

/** Whether the device was asked to stay lit. */
let isLit = false

/** @param {boolean} lit */
export function keepLit(lit) {
  if (!surroundings.phone.keep_awake || lit === isLit) return
  isLit = lit
  // Where it goes dark nothing is lost: no word of it.
  keepAwake(lit).catch((failure) => console.error(failure))
}

export function feelTick() {
  if (surroundings.phone.tick) tick().catch((failure) => console.error(failure))
}
