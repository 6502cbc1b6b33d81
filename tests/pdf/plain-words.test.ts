/** Plain words come out of signs and pairs as the font's own layout has them. */

import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import fc from 'fast-check'
import { create, type Features, type Run } from 'fontkit'
import { expect, test } from 'vitest'
import { plainLayout } from '../../src/pdf/plain-words.ts'
import { demoFiles } from '../records-on-disk.ts'
import { sized } from '../thorough.ts'

const path = createRequire(import.meta.url).resolve(
  '@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf'
)
const font = create(readFileSync(path))
const plainly = plainLayout(font)

const figures: Features = { tnum: true, calt: false }
const codes: Features = { calt: false }

const said = ({ glyphs, positions, advanceWidth }: Run) => ({
  glyphs: glyphs.map(({ id }) => id),
  positions: positions.map(({ xAdvance, yAdvance, xOffset, yOffset }) => [
    ...[xAdvance, yAdvance, xOffset, yOffset]
  ]),
  advanceWidth
})

/** Texts that come out otherwise. */
const differing = (texts: readonly string[], features: Features): string[] =>
  texts.filter(
    text =>
      JSON.stringify(said(plainly(text, features))) !==
      JSON.stringify(said(font.layout(text, features)))
  )

const signs = font.characterSet
  .filter(code => (code >= 0x20 && code < 0x180) || (code >= 0x2000 && code < 0x2300))
  .map(code => String.fromCodePoint(code))

test.each([
  ['figures', figures],
  ['codes', codes]
])('every sign between others, as %s', (_, features) => {
  const found = signs.map(sign => `A${sign}v1${sign}.`)
  expect(found.length).toBeGreaterThan(400)
  expect(differing(found, features)).toEqual([])
})

test('words of the demo, and any signs beside each other', () => {
  const words = [...new Set(demoFiles.flatMap(({ text }) => text.split(/\s+/u)))]
  const every = sized(50, 1)
  expect(
    differing(
      words.filter((_, index) => index % every === 0),
      figures
    )
  ).toEqual([])
  const any = fc.array(fc.constantFrom(...signs), { maxLength: 12 }).map(parts => parts.join(''))
  const often = fc.array(fc.constantFrom(...'AVToy.,-17 ()/°±·µé')).map(parts => parts.join(''))
  fc.assert(
    fc.property(fc.oneof(any, often), fc.constantFrom(figures, codes), (text, features) => {
      expect(differing([text], features)).toEqual([])
    }),
    { numRuns: sized(300, 20_000) }
  )
})

test.each([
  ['an accent that joins its letter', 'e\u0301x'],
  ['an i that loses its dot', 'i\u0301'],
  ['a fraction', '1\u20442'],
  ['a sign that does not show', 'co\u00adop'],
  ['Greek', 'Ω·m µΩ'],
  ['nothing', '']
])('%s is left to the font', (_, text) => {
  expect(differing([text], figures)).toEqual([])
})

test('scaling the positions of one word leaves others, and its own next time, as they are', () => {
  const before = said(plainly('Tally', figures))
  const run = plainly('Tally', figures)
  for (const position of run.positions) position.xAdvance *= 0.5
  expect(run.advanceWidth).toBe(before.advanceWidth / 2)
  expect(said(plainly('Tally', figures))).toEqual(before)
})
