/** The part of fontkit used here: the package ships no types. */
declare module 'fontkit' {
  /** OpenType features to turn on or off: `{ tnum: true, calt: false }`. */
  export type Features = Readonly<Record<string, boolean>>

  /** How far a sign moves the pen, and how far from the pen it stands. */
  export interface Position {
    xAdvance: number
    yAdvance: number
    xOffset: number
    yOffset: number
  }

  export interface Glyph {
    readonly id: number
    readonly advanceWidth: number
  }

  /** A shaped text, in font units. */
  export interface Run {
    readonly glyphs: readonly Glyph[]
    readonly positions: Position[]
    readonly advanceWidth: number
  }

  export interface Font {
    readonly postscriptName: string
    /** Every code point the font has a sign for. */
    readonly characterSet: readonly number[]
    hasGlyphForCodePoint(codePoint: number): boolean
    glyphForCodePoint(codePoint: number): Glyph
    /** In the script that the text's first letter is of, where none is named. */
    layout(text: string, features?: Features, script?: 'latn' | 'DFLT'): Run
  }

  export function create(bytes: Uint8Array): Font
}
