// The shop's own lines, its words, the look of the page, and the screen to come back to.
/** @import { Settings, Term, TermEntry, Usage } from '../types/api.d.ts' */
import { html } from '../vendor/lit-html/lit-html.js'
import { getCatalogue, setSettings } from '../backend.js'
import { catalogue } from '../catalogue.js'
import { choice, optionsOf } from '../controls/choice.js'
import { field } from '../controls/field.js'
import { tick } from '../controls/input.js'
import { showLook } from '../frame/look.js'
import { makeRoom } from '../frame/room.js'
import { painted } from '../painted.js'
import { toInstruments, toShop } from '../route.js'
import { attempt, state } from '../state.js'
import { capitalised } from '../text.js'
import { words } from '../words.js'

export function settings() {
  const { shop_name, shop_address, shop_phone, shop_conditions, look, text_size, keys } = state.settings
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
      ${field({
        key: 'shop-phone',
        label: words.settings.shopPhone,
        saved: shop_phone,
        kind: 'telephone',
        save: (text) => keepSettings({ shop_phone: text }),
      })}
      ${field({
        key: 'shop-conditions',
        label: words.settings.shopConditions,
        saved: shop_conditions,
        long: true,
        save: (text) => keepSettings({ shop_conditions: text }),
      })}
      ${choice({
        name: 'look',
        legend: words.settings.look,
        options: optionsOf(words.settings.looks),
        value: look,
        choose: (chosen) => keepLook({ look: chosen }),
      })}
      ${choice({
        name: 'text-size',
        legend: words.settings.textSize,
        options: TEXT_SIZES.map((size) => ({ value: String(size), label: words.settings.percent(size) })),
        value: String(text_size),
        choose: (size) => keepLook({ text_size: Number(size) }),
      })}
      ${tick({
        label: words.settings.keys,
        hint: words.settings.keysHint,
        checked: keys,
        enter: (work) => keepSettings({ keys: work }),
      })}
      ${catalogue().terms.map(termChoice)}
      <div class="onward">
        <a class="button" href=${toInstruments()}>${words.settings.instruments}</a>
        <a class="button" href=${toShop('prices')}>${words.settings.prices}</a>
        <a class="button" href=${toShop('backup')}>${words.screens.backup}</a>
        <a class="button" href=${toShop('rules')}>${words.settings.rules}</a>
      </div>`,
  }
}

/** In per cent of what the device asks for. */
const TEXT_SIZES = [100, 115, 130, 150, 175, 200]

/** It is seen at once; what was pressed stays where it is. @param {Partial<Settings>} changed */
function keepLook(changed) {
  const top = () => document.activeElement?.getBoundingClientRect().top ?? 0
  const before = top()
  showLook({ ...state.settings, ...changed })
  makeRoom()
  const scroller = document.querySelector('html:not(.flowing) .screen-main') ?? window
  scroller.scrollBy(0, top() - before)
  keepSettings(changed)
}

/** Which of two words the shop says. @param {TermEntry} term */
const termChoice = ({ id, british, american }) =>
  choice({
    name: id,
    legend: capitalised(words.settings.term(british, american)),
    options: /** @type {{ value: Usage, label: string }[]} */ ([
      { value: 'british', label: british },
      { value: 'american', label: american },
    ]),
    value: state.settings.terms[id],
    choose: (usage) => keepTerm(id, usage),
  })

/** The tables and the open job are then told in other words. @param {Term} id @param {Usage} usage */
const keepTerm = (id, usage) =>
  attempt(async () => {
    await store({ terms: { ...state.settings.terms, [id]: usage } })
    state.catalogue = await getCatalogue()
    state.saved = null
    state.notice = words.frame.saved
  })

/** Notes the screen, so that it returns after the system has ended the program. @param {string} address */
export function rememberScreen(address) {
  // A screen that can't be noted is no loss worth a sentence: the program then starts with the jobs.
  if (state.settings.last_screen !== address) painted().then(() => store({ last_screen: address })).catch(() => {})
}

/** Keeps what the shop has set. @param {Partial<Settings>} changed */
export const keepSettings = (changed) =>
  attempt(async () => {
    await store(changed)
    state.notice = words.frame.saved
  })

/** @type {Promise<unknown>} */
let queue = Promise.resolve()

/** Settings are written whole, so one after the other. @param {Partial<Settings>} changed */
function store(changed) {
  state.settings = { ...state.settings, ...changed }
  const writing = queue.then(() => setSettings(state.settings))
  queue = writing.catch(() => {})
  return writing
}
