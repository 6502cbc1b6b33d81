/** Signs, numbers and names of a formula's text. */

import type { NamePart } from './formula-types.ts'

export type Token =
  | { readonly is: 'sign'; readonly text: string }
  | { readonly is: 'number'; readonly text: string }
  | { readonly is: 'power'; readonly text: string }
  | { readonly is: 'name'; readonly text: string; readonly parts: readonly NamePart[] }

const SPACE = /^\s+/u
const NUMBER = /^(?:\d+(?:[.,]\d+)?|∞)(?: ?(?:%|°C))?/u
const NAME = /^\p{L}[\p{L}\p{M}\d₀-₉⁺⁻″]*(?:_[\p{L}\d]+)?/u
const POWER = /^[²³]/u
const SIGN = /^[-+−·/=≥(),√ΣΠ]/u

const lowered = '₀₁₂₃₄₅₆₇₈₉'

/** The tokens of a text; undefined where a sign is none of mathematics. */
export function tokensOf(text: string): Token[] | undefined {
  const tokens: Token[] = []
  let rest = text
  while (rest !== '') {
    const token = nextToken(rest)
    if (!token) return undefined
    rest = rest.slice(token.length)
    if (token.is) tokens.push(token.is)
  }
  return tokens
}

/** The next token and how much of the text it takes; a space is none. */
function nextToken(text: string): { readonly length: number; readonly is?: Token } | undefined {
  const space = SPACE.exec(text)?.[0]
  if (space) return { length: space.length }
  for (const [is, pattern] of [
    ['sign', SIGN],
    ['power', POWER],
    ['number', NUMBER]
  ] as const) {
    const found = pattern.exec(text)?.[0]
    if (found) return { length: found.length, is: { is, text: found } }
  }
  const name = NAME.exec(text)?.[0]
  return name
    ? { length: name.length, is: { is: 'name', text: name, parts: partsOf(name) } }
    : undefined
}

/** 'H2SO4' to H, 2 lowered, SO, 4 lowered; 'R_a' to R, a lowered; 'H⁺' to H, + raised. */
function partsOf(name: string): NamePart[] {
  return [...name.matchAll(/_([\p{L}\d]+)|(\d+|[₀-₉]+)|([⁺⁻])|([^\d₀-₉⁺⁻_]+)/gu)].map(
    ([, below, digits, charge, line]) =>
      below !== undefined
        ? { text: below, at: 'below' }
        : digits !== undefined
          ? {
              text: digits.replace(/[₀-₉]/gu, digit => String(lowered.indexOf(digit))),
              at: 'below'
            }
          : charge !== undefined
            ? { text: charge === '⁺' ? '+' : '−', at: 'above' }
            : { text: line!, at: 'line' }
  )
}
