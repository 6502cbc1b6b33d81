/** Texts that setting up a workshop writes for their author to replace: a record that has one is not finished. */
export const placeholders = {
  /** Of a method: printed on certificates. */
  conditions: 'conditions not written down yet',
  /** Of a grade: printed on its page and datasheet. */
  description: 'No description yet.',
  /** Of a material: never published. */
  supplier: 'not written down yet'
} as const

/** Whether nothing was added to it: capitals, spaces and points make no other text of it. */
export const isPlaceholder = (name: keyof typeof placeholders, text: string): boolean =>
  bareWords(text) === bareWords(placeholders[name])

/** A text's words alone, whatever their capitals and points: for whether two texts say the same. */
export const bareWords = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
