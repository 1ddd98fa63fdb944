// How a text is set, whatever it says.

/** With a capital first letter, to begin a sentence or a label. @param {string} text */
export const capitalised = (text) => text.charAt(0).toUpperCase() + text.slice(1)
