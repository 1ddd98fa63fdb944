// By what one item of a list is told from another, as text.
/** @import { ListItem } from '../types/api.d.ts' */

/** @param {Pick<ListItem, 'asked'>} item */
export const itemKey = ({ asked }) => JSON.stringify(asked.key)
