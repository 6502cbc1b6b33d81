/** How a font turns words into signs: which alternates it uses, and what it remembers. */

import type { Features, Font, Position, Run } from 'fontkit'
import { plainLayout } from './plain-words.ts'

const PRIVATE_USE = { first: 0xe000, last: 0xf8ff }

const numbers: Features = { tnum: true, calt: false }
const codes: Features = { calt: false }

/** Words remembered for each font: some 2 MB when full. */
const MOST_WORDS = 5000

/**
 * Set a font up for the papers.
 *
 * Figures are of one width, so that numbers align, but not in codes and dates: the hyphens between
 * would widen too. No contextual alternates: they would draw '3x9' as '3×9' and '->' as '→', and
 * so print other signs than the record holds.
 */
export function shapePlainly(font: Font): Font {
  const layout = plainLayout(font)
  nameGlyphs(font)
  const memory: Memory = { words: noWords(), shaped: 0, fresh: [], places: new Map() }
  memories.set(font, memory)
  font.layout = text => {
    const run = layout(text, text.includes('-') ? codes : numbers)
    memory.shaped += 1
    memory.fresh.push(run)
    return run
  }
  return font
}

/** Words as PDFKit keeps them: shaped, and scaled to thousandths of the type size. */
export type ShapedWords = Record<string, Run>

interface Memory {
  words: ShapedWords
  shaped: number
  /** Shaped for the last file: PDFKit scales the places of their signs after it gets them. */
  fresh: Run[]
  /** Each place there is of a sign, once: words have a hundred times as many signs. */
  readonly places: Map<string, Position>
}

const memories = new WeakMap<Font, Memory>()

/** Any word can be looked up in it, even one that every object has a field for. */
const noWords = () => Object.create(null) as ShapedWords

/**
 * The words a font has shaped so far, for the next file to look them up in: shaping takes half of
 * a paper's time, and papers share their words.
 *
 * @param font one set up by `shapePlainly`
 */
export function shapedWords(font: Font): ShapedWords {
  const memory = memories.get(font)!
  for (const { positions } of memory.fresh) sharePlaces(positions, memory.places)
  memory.fresh = []
  if (memory.shaped > MOST_WORDS) Object.assign(memory, { words: noWords(), shaped: 0 })
  return memory.words
}

function sharePlaces(positions: Position[], places: Map<string, Position>): void {
  for (const [index, place] of positions.entries()) {
    const key = Object.values(place).join(' ')
    const known = places.get(key)
    if (known) positions[index] = known
    else places.set(key, place)
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
