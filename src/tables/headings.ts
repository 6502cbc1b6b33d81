/** The line of headings: which column is which, and the units written there. */

/** A heading without its unit, and that unit: 'Thickness [mm]' → Thickness, mm. */
export interface Heading {
  readonly name: string
  readonly unit?: string
}

/** 'Name [unit]', 'Name (unit)', 'Name / unit', 'Name in unit'. */
const FORMS = [
  /^(.+?)\s*\[\s*([^\]]*?)\s*\]$/u,
  /^(.+?)\s*\(\s*([^()]*?)\s*\)$/u,
  /^(.+?)\s+\/\s*(\S+)$/u,
  /^(.+?)\s+in\s+(\S+)$/u
]

/**
 * Read a heading.
 *
 * @param isUnit whether a text names a unit: brackets around anything else belong to the name
 */
export function headingOf(text: string, isUnit: (text: string) => boolean): Heading {
  for (const form of FORMS) {
    const match = form.exec(text)
    if (match && isUnit(match[2]!)) return { name: match[1]!, unit: match[2]! }
  }
  return { name: text }
}

/** Headings compared letter by letter, however wide their spaces: t is a time and T a temperature. */
export const sameHeading = (a: string, b: string): boolean => plain(a) === plain(b)

const plain = (text: string) => text.trim().replace(/\s+/gu, ' ')
