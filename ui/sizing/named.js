// Sentences that begin with the name of a part.
import { capitalised } from '../text.js'

/** Beside its name a part needs none in the sentence. @param {string} sentence @param {string} label */
export function withoutName(sentence, label) {
  const lead = [`${label}: `, `${label} `].find((lead) => sentence.startsWith(lead)) ?? ''
  return capitalised(sentence.slice(lead.length))
}
