/**
 * Plain words laid out from what their signs and pairs of signs come to.
 *
 * The font's own layout goes through all its rules for each word, which took a fifth of a paper's time.
 * Of plain signs, rules see one sign (which figure of one width stands for it) or two (how near they
 * stand): so these are asked for once, and a word is their sum. Signs joined or changed by a third are
 * none of them.
 */

import type { Features, Font, Glyph, Position, Run } from 'fontkit'

/**
 * Latin letters, signs of sentences, raised and lowered figures, arrows and signs of formulas. Not among
 * them: accents that join a letter, the slash of fractions, signs that don't show, other scripts.
 */
const PLAIN = /^[ -¬®-ſ‐-‧‰-⁃⁰-ₜ←-⋿]+$/u

const LATIN = /\p{Script=Latin}/u

/** A font keeps rules by script: words without a letter follow those of none. */
type Script = 'latn' | 'DFLT'

interface Sign {
  readonly character: string
  readonly glyph: Glyph
  /** How much nearer the sign that follows stands; nothing where they do more than that to each other. */
  readonly kerns: Map<Sign, number | undefined>
}

type Layout = (text: string) => Run

/** A font's layout that has fontkit look at each sign and each pair once. */
export function plainLayout(font: Font): (text: string, features: Features) => Run {
  const layout = font.layout.bind(font)
  const known = new Map<Features, Record<Script, Signs>>()
  return (text, features) => {
    if (!PLAIN.test(text)) return layout(text, features)
    let scripts = known.get(features)
    if (!scripts) {
      const signsIn = (script: Script) => signsOf(part => layout(part, features, script))
      scripts = { latn: signsIn('latn'), DFLT: signsIn('DFLT') }
      known.set(features, scripts)
    }
    return runOf(scripts[LATIN.test(text) ? 'latn' : 'DFLT'], text) ?? layout(text, features)
  }
}

/** Signs in one script, with one set of features. */
interface Signs {
  readonly of: (character: string) => Sign | undefined
  readonly kern: (left: Sign, right: Sign) => number | undefined
}

function signsOf(layout: Layout): Signs {
  const signs = new Map<string, Sign | undefined>()
  return {
    of: character => {
      if (!signs.has(character)) signs.set(character, signAlone(layout, character))
      return signs.get(character)
    },
    kern: (left, right) => {
      if (!left.kerns.has(right)) left.kerns.set(right, kernBetween(layout, left, right))
      return left.kerns.get(right)
    }
  }
}

/** A word as its signs, each moved by the one behind it; nothing where that is not all there is to it. */
function runOf(signs: Signs, text: string): Run | undefined {
  const glyphs: Glyph[] = []
  const positions: Position[] = []
  let before: Sign | undefined
  for (const character of text) {
    const sign = signs.of(character)
    const kern = before && sign ? signs.kern(before, sign) : 0
    if (sign === undefined || kern === undefined) return undefined
    if (before) positions.at(-1)!.xAdvance += kern
    glyphs.push(sign.glyph)
    positions.push({ xAdvance: sign.glyph.advanceWidth, yAdvance: 0, xOffset: 0, yOffset: 0 })
    before = sign
  }
  return new PlainRun(glyphs, positions)
}

function signAlone(layout: Layout, character: string): Sign | undefined {
  const { glyphs, positions } = layout(character)
  const [glyph, ...others] = glyphs
  if (!glyph || others.length > 0 || shiftOf(positions[0]!, glyph) !== 0) return undefined
  return { character, glyph, kerns: new Map() }
}

function kernBetween(layout: Layout, left: Sign, right: Sign): number | undefined {
  const { glyphs, positions } = layout(left.character + right.character)
  const isPair = glyphs.length === 2 && glyphs[0] === left.glyph && glyphs[1] === right.glyph
  if (!isPair || shiftOf(positions[1]!, right.glyph) !== 0) return undefined
  return shiftOf(positions[0]!, left.glyph)
}

/** By how much a position differs from its glyph's own; nothing where not in its advance alone. */
const shiftOf = (
  { xAdvance, yAdvance, xOffset, yOffset }: Position,
  { advanceWidth }: Glyph
): number | undefined =>
  yAdvance === 0 && xOffset === 0 && yOffset === 0 ? xAdvance - advanceWidth : undefined

/** As fontkit's own: whoever scales the positions scales the width with them. */
class PlainRun implements Run {
  readonly glyphs: readonly Glyph[]
  readonly positions: Position[]

  constructor(glyphs: readonly Glyph[], positions: Position[]) {
    this.glyphs = glyphs
    this.positions = positions
  }

  get advanceWidth(): number {
    return this.positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0)
  }
}
