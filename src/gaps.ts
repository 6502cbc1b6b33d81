/** Texts with gaps in braces, 'First {lot}': how words reach the scripts of pages in every language. */

/**
 * Fill the gaps of a text.
 *
 * @param partFor what stands in a gap, by its name; one that nothing is given for stays as it is
 */
export const fillGaps = (
  text: string,
  partFor: (name: string) => string | number | undefined
): string => text.replace(/\{(\w+)\}/gu, (gap, name: string) => String(partFor(name) ?? gap))
