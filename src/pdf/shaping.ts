/** How a font turns words into signs: which alternates it uses, and what it remembers. */

import type { Features, Font, Run } from 'fontkit'

const PRIVATE_USE = { first: 0xe000, last: 0xf8ff }

const numbers: Features = { tnum: true, calt: false }
const codes: Features = { calt: false }

/** Words remembered for each font: some 10 MB when full. */
const MOST_WORDS = 5000

/**
 * Set a font up for the papers.
 *
 * Figures are of one width, so that numbers align, but not in codes and dates: the hyphens between
 * would widen too. No contextual alternates: they would draw '3x9' as '3×9' and '->' as '→', and
 * so print other signs than the record holds.
 */
export function shapePlainly(font: Font): Font {
  const layout = font.layout.bind(font)
  const known = new Map<string, Run>()
  nameGlyphs(font)
  font.layout = text => {
    const run = known.get(text) ?? layout(text, text.includes('-') ? codes : numbers)
    if (known.size >= MOST_WORDS) known.clear()
    known.set(text, run)
    return copyOf(run)
  }
  return font
}

/** Shaping takes half of a paper's time and papers share their words, but PDFKit scales in place. */
function copyOf({ glyphs, positions }: Run): Run {
  const copies = positions.map(position => ({ ...position }))
  return {
    glyphs,
    positions: copies,
    get advanceWidth() {
      return copies.reduce((sum, { xAdvance }) => sum + xAdvance, 0)
    }
  }
}

/**
 * Let the font meet each glyph by its own code point first. It remembers the first text a glyph
 * stood for, so without this a document's bytes would depend on the documents made before it.
 */
function nameGlyphs(font: Font): void {
  const inOrder = [...font.characterSet].sort((a, b) => a - b)
  for (const codePoint of inOrder)
    if (codePoint < PRIVATE_USE.first || codePoint > PRIVATE_USE.last)
      font.glyphForCodePoint(codePoint)
}
