// The shop's own lines, and the screen to come back to.
import { html } from '../vendor/lit-html/lit-html.js'
import { setSettings } from '../backend.js'
import { field } from '../controls/field.js'
import { toInstruments, toShop } from '../route.js'
import { attempt, state } from '../state.js'
import { words } from '../words.js'

export function settings() {
  const { shop_name, shop_address } = state.settings
  return {
    title: words.screens.settings,
    body: html`
      <p>${words.settings.intro}</p>
      ${field({
        key: 'shop-name',
        label: words.settings.shopName,
        saved: shop_name,
        save: (text) => keepSettings({ shop_name: text }),
      })}
      ${field({
        key: 'shop-address',
        label: words.settings.shopAddress,
        saved: shop_address,
        long: true,
        save: (text) => keepSettings({ shop_address: text }),
      })}
      <div class="onward">
        <a class="button" href=${toInstruments()}>${words.settings.instruments}</a>
        <a class="button" href=${toShop('prices')}>${words.settings.prices}</a>
        <a class="button" href=${toShop('rules')}>${words.settings.rules}</a>
      </div>`,
  }
}

/** Notes the screen, so that it returns after the system has ended the program. @param {string} address */
export function rememberScreen(address) {
  // A screen that can't be noted is no loss worth a sentence: the program then starts with the jobs.
  if (state.settings.last_screen !== address) store({ last_screen: address }).catch(() => {})
}

/** Keeps what the shop has set. @param {Partial<typeof state.settings>} changed */
export const keepSettings = (changed) =>
  attempt(async () => {
    await store(changed)
    state.notice = words.frame.saved
  })

/** @type {Promise<unknown>} */
let queue = Promise.resolve()

/** Settings are written whole, so one after the other. @param {Partial<typeof state.settings>} changed */
function store(changed) {
  state.settings = { ...state.settings, ...changed }
  const writing = queue.then(() => setSettings(state.settings))
  queue = writing.catch(() => {})
  return writing
}
