// The paper of a screen in the system's viewer, from which it is printed, where the system has one.
/** @import { Screen } from './screens.js' */
import { surroundings } from '../backend.js'
import { openPaper } from '../papers.js'
import { state } from '../state.js'

/** @param {Screen} screen */
export const isPrinted = ({ paper }) => paper !== undefined && surroundings.opensDocuments

/** @param {Screen} screen */
export const print = ({ paper }) => paper && openPaper(state.route.job, paper.document, paper.selection)
