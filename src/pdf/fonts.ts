/** The two faces of the papers, parsed once per process. */

import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { create, type Font } from 'fontkit'
import { shapePlainly } from './shaping.ts'

export type Face = 'regular' | 'semibold'

const files: Record<Face, string> = {
  regular: '@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf',
  semibold: '@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf'
}

const parsed = new Map<Face, Font>()
const signs = new Map<Face, ReadonlySet<number>>()

/** A text holds a sign the papers' font lacks: the paper would show an empty box for it. */
export class MissingGlyph extends Error {
  readonly sign: string
  readonly text: string

  constructor(sign: string, text: string) {
    const code = sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')
    super(`the font has no sign for '${sign}' (U+${code}), found in '${text}'`)
    this.name = 'MissingGlyph'
    this.sign = sign
    this.text = text
  }
}

/** The parsed font of a face. */
export function fontOf(face: Face): Font {
  const known = parsed.get(face)
  if (known) return known
  const path = createRequire(import.meta.url).resolve(files[face])
  const font = shapePlainly(create(readFileSync(path)))
  parsed.set(face, font)
  return font
}

/**
 * Refuse a text with a sign the face lacks.
 *
 * @throws MissingGlyph naming the sign and the text
 */
export function assertGlyphs(face: Face, text: string): void {
  const known = signsOf(face)
  for (const sign of text) if (!known.has(sign.codePointAt(0)!)) throw new MissingGlyph(sign, text)
}

/** Code points a face has signs for; the font searches its table for each. */
function signsOf(face: Face): ReadonlySet<number> {
  const known = signs.get(face) ?? new Set(fontOf(face).characterSet)
  signs.set(face, known)
  return known
}
