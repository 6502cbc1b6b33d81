/** Texts at the beginning of a sentence. */

/** The first letter large, all others as they are: German has large ones of its own. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
