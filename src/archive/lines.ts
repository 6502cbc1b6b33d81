/** Many texts as one, so that looking for a part of any takes one search, not one each. */

/** No text holds it: a field of a page takes no line break, and a part that has one is nowhere. */
const BETWEEN = '\n'

/** Texts that are searched again and again. */
export interface Lines {
  /**
   * Tell each text that has a part.
   *
   * @param hit takes the text's row, the text’s length, and how far into it the part first stands
   */
  having(part: string, hit: (row: number, length: number, at: number) => void): void
}

export function linesOf(texts: readonly string[]): Lines {
  const all = texts.map(text => text.replaceAll(BETWEEN, ' ')).join(BETWEEN) + BETWEEN
  const starts = new Uint32Array(texts.length + 1)
  for (const [row, text] of texts.entries()) starts[row + 1] = starts[row]! + text.length + 1
  return {
    having(part, hit) {
      if (part.includes(BETWEEN)) return
      let row = 0
      let at = all.indexOf(part)
      while (at >= 0 && at < all.length) {
        while (starts[row + 1]! <= at) row += 1
        const [start, next] = [starts[row]!, starts[row + 1]!]
        hit(row, next - start - 1, at - start)
        at = all.indexOf(part, next)
      }
    }
  }
}
