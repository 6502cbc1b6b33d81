/** Hazard statements: the law's words, with the supplier's in the gaps. */

import { describe, expect, test } from 'vitest'
import { type Language, statementCodes, statementText } from '../../src/hazards/statements.ts'
import { problemsOf, smallFiles, withChange } from '../records-on-disk.ts'
import { pageOf, publicSite } from './demo.ts'

const languages: readonly Language[] = ['en', 'de', 'fr', 'es', 'it']

// Regulation (EC) No 1272/2008, annexes III and IV, as quoted in the project's own data file.
test.for([
  ['H319', 'en', undefined, 'Causes serious eye irritation.'],
  ['H319', 'de', undefined, 'Verursacht schwere Augenreizung.'],
  ['P264', 'en', 'hands', 'Wash hands thoroughly after handling.'],
  ['P370+P378', 'en', 'dry sand', 'In case of fire: Use dry sand to extinguish.'],
  ['P501', 'en', 'a recycling centre', 'Dispose of contents/container to a recycling centre.'],
  ['P501', 'en', 'places at $& each', 'Dispose of contents/container to places at $& each.'],
  ['H351', 'en', undefined, 'Suspected of causing cancer.'],
  ['H351', 'en', 'by inhalation', 'Suspected of causing cancer by inhalation.'],
  ['H372', 'en', undefined, 'Causes damage to organs through prolonged or repeated exposure.'],
  ['EUH208', 'en', 'dust', 'Contains dust. May produce an allergic reaction.']
] as const)('%s in %s, filled with %s: %s', ([code, language, filling, text]) => {
  expect(statementText(code, language, filling)).toEqual({ ok: true, text })
})

test.for([
  ['H999', undefined, 'unknown code'],
  ['constructor', undefined, 'unknown code'],
  ['P264', undefined, 'gap not filled'],
  ['EUH208', undefined, 'gap not filled'],
  ['P411', '40', 'gap not filled'],
  ['H319', 'eyes', 'nothing to fill']
] as const)('%s filled with %s: %s', ([code, filling, reason]) => {
  expect(statementText(code, 'en', filling)).toEqual({ ok: false, reason })
})

test('no text in any language leaves a gap or a bracket open to readers', () => {
  for (const code of statementCodes)
    for (const language of languages) {
      const bare = statementText(code, language)
      const statement = bare.ok ? bare : statementText(code, language, 'words')
      if (!statement.ok) continue
      expect(statement.text).toMatch(/^[^<>…]+$/u)
      expect(statement.text).not.toMatch(/ {2}/u)
    }
})

describe('a grade', () => {
  const declaring = (hazards: string) =>
    withChange(smallFiles, 'grades/FK-1.yaml', 'limits:', `hazards: { ${hazards} }\nlimits:`)

  test.for([
    ['statements: [H319], basis: our own', []],
    [
      'statements: [H391], basis: our own',
      ['MISSING_TEXT hazards.statements.0: H391 is no statement known here']
    ],
    [
      'statements: [P264], basis: our own',
      [
        'MISSING_TEXT hazards.statements.0: P264 has a gap that the law leaves to the supplier, and no words for it'
      ]
    ],
    ['statements: [P264], fill: { P264: hands }, basis: our own', []],
    [
      'statements: [H319], fill: { P264: hands }, basis: our own',
      ['MISSING_TEXT hazards.fill.P264: fills in P264, which is not among the statements']
    ]
  ] as const)('declares { %s }', ([hazards, problems]) => {
    expect(problemsOf(declaring(hazards))).toEqual(problems)
  })

  test('shows its statements with who says so and where the words are from', () => {
    const { hazards } = pageOf(publicSite, 'EB-26-001').document
    expect(hazards?.statements.map(({ code }) => code)).toEqual([
      'H319',
      'P280',
      'P305+P351+P338',
      'P337+P313'
    ])
    expect(hazards?.basis).toContain('not a legal classification and no safety data sheet')
    expect(hazards?.edition).toContain('consolidated text of 2025-09-01')
    expect(pageOf(publicSite, 'FL-26-001').document.hazards).toBeUndefined()
  })
})
