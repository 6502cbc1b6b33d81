/** Our texts beside those of another hand: equal where the law kept its words, else different. */

import { describe, expect, test } from 'vitest'
import { type Language, statementCodes } from '../../src/hazards/statements.ts'
import texts from '../../src/hazards/clp-statements.json' with { type: 'json' }
import { fetchIndependentTexts, lettersOf, readIndependentTexts } from './independent-texts.ts'

const languages: readonly Language[] = ['en', 'de', 'fr', 'es', 'it']
const folder = fetchIndependentTexts()
const ours = (code: string, language: Language) =>
  lettersOf((texts.statements as Record<string, Record<Language, string>>)[code]![language])

/**
 * H and EUH statements that differ, by language: the law reworded them after 2008, or the package
 * slips. en H334 lacks a blank, which letters do not show.
 */
const differing: Readonly<Record<Language, Readonly<Record<string, string>>>> = {
  en: {},
  de: {},
  fr: {
    H314: 'reworded in 2018 and 2020',
    H318: 'reworded in 2018',
    H361: 'the package lacks the unborn child'
  },
  es: { H226: 'the package has it in the singular', H361: 'reworded in 2017' },
  it: { H350i: 'the package slips in a letter' }
}

/** Precautions reworded since 2008: were ours equal to the package's, ours would be out of date. */
const reworded = 'P210 P220 P234 P240 P243 P284 P302+P352 P304+P340 P310 P312 P406 P420'.split(' ')

/** Precautions whose words the law has kept since 2008. */
const kept =
  'P101 P102 P201 P202 P233 P235 P260 P261 P264 P271 P273 P330 P363 P391 P402 P404 P405'.split(' ')

/** Where one language goes its own way. */
const keptHere: Readonly<Record<Language, readonly string[]>> = {
  en: [],
  de: ['P240'],
  fr: ['P243'],
  es: [],
  it: ['P304+P340', 'P406']
}
const differingHere: Readonly<Record<Language, Readonly<Record<string, string>>>> = {
  en: {},
  de: {},
  fr: {
    P201: 'reworded in 2017',
    P260: 'the package leaves out fume and mist',
    P261: 'the package leaves out fume and mist'
  },
  es: { P201: 'reworded in 2017' },
  it: {}
}

describe.skipIf(folder === undefined).each(languages)('texts in %s', language => {
  const theirs =
    folder === undefined ? new Map<string, string>() : readIndependentTexts(folder, language)
  const shared = statementCodes.filter(code => theirs.has(code))

  test('the package was read', () => {
    expect([...theirs.keys()].filter(code => code.startsWith('H')).length).toBe(71)
    expect(shared.filter(code => /^E?U?H/u.test(code)).length).toBeGreaterThan(40)
  })

  test('hazard statements are equal, but for those listed', () => {
    const different = shared.filter(
      code => /^(?:H|EUH)/u.test(code) && theirs.get(code) !== ours(code, language)
    )
    expect(different.sort()).toEqual(Object.keys(differing[language]).sort())
  })

  test('precautions the law reworded differ', () => {
    const equal = reworded.filter(
      code => theirs.has(code) && theirs.get(code) === ours(code, language)
    )
    expect(equal).toEqual(keptHere[language])
  })

  test('precautions the law kept are equal', () => {
    const different = kept.filter(code => theirs.get(code) !== ours(code, language))
    expect(different).toEqual(Object.keys(differingHere[language]))
  })
})
