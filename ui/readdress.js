// A step within a walk: the address follows, without an entry in the history, so that Back leads out of the walk.
import { readRoute } from './route.js'
import { rememberScreen } from './settings/settings.js'
import { state } from './state.js'

/** @param {string} address */
export function readdress(address) {
  history.replaceState(null, '', address)
  state.route = readRoute(address)
  rememberScreen(address)
}
