// Which changes take something off that was there: these are told, so that a stray tap is seen.
/** @import { Change, JobView } from '../types/api.d.ts' */

/** @param {Change} change @param {JobView | null} before the job as it was */
export function removes(change, before) {
  switch (change.do) {
    case 'remove-photo':
    case 'untag':
    case 'remove-ancillary':
    case 'follow-rules':
    case 'drop-line':
    case 'drop-undersize':
    case 'drop-oversize':
    case 'drop-grade':
      return true
    case 'clean': {
      const record = [...(before?.assessment.parts ?? []), ...(before?.assessment.outside ?? [])]
      return record.some(({ part, findings }) => part === change.part && findings.length > 0)
    }
    case 'clean-back':
      return !change.clean
    case 'show-photo':
      return !change.shown
    case 'renew-cap':
      return !change.renewed
    case 'give-back':
      return !change.given
    case 'complain':
      return !change.told
    case 'remark':
    case 'fill':
      return change.text.trim() === ''
    case 'read-mark':
      return change.mark.trim() === ''
    case 'tick':
      return change.tick.done === 0
    case 'price-item':
      return change.price === null
    case 'photograph-ancillary':
      return change.photo === null
    case 'found-size':
    case 'choose-size':
    case 'confirm-size':
      return change.size === null
    default:
      return false
  }
}
