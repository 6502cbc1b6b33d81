/** Hazard statements: the law's words, with the supplier's in the gaps. */

import { describe, expect, test } from 'vitest'
import { type Language, statementCodes, statementText } from '../../src/hazards/statements.ts'
import { problemsOf, smallFiles, withChange } from '../records-on-disk.ts'
import { pageOf, publicSite, siteOf } from './demo.ts'

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
  ['H316', undefined, 'unknown code'],
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
  const undecided = (hazards: string) =>
    withChange(smallFiles, 'grades/FK-1.yaml', 'limits:', `hazards: { ${hazards} }\nlimits:`)
  const deciding = (hazards: string, about: string, on = '2026-02-06') =>
    withChange(
      undecided(hazards),
      'batches/EB-1.yaml',
      'status:',
      `hazards:\n  decisions:\n    - { about: ${about}, by: quality manager, on: ${on}, because: seen before }\nstatus:`
    )
  const declaring = (hazards: string) => deciding(hazards, 'missing data')
  const none = 'classified: [not classified], basis: our own'

  test('a lot without a pH is not let go until someone says why', () => {
    expect(problemsOf(undecided(none))).toEqual([
      'NOT_RELEASABLE status.0.is: cannot be let go: the pH of the slurry was not measured'
    ])
    expect(problemsOf(declaring(none))).toEqual([])
    expect(problemsOf(deciding(none, 'metals'))).toHaveLength(1)
  })

  test('a class beyond what is computed needs a role that answers for it', () => {
    const eyes = 'classified: [Eye Irrit. 2], precautions: [P280], basis: our own'
    const answered = `classified-by: quality manager, ${eyes}`
    const why =
      'NOT_RELEASABLE status.0.is: cannot be let go: its grade declares Eye Irrit. 2, beyond'
    expect(problemsOf(declaring(eyes)).filter(line => line.startsWith(why))).toHaveLength(1)
    expect(problemsOf(declaring(answered))).toEqual([])
    expect(problemsOf(declaring(`classified-by: nobody, ${eyes}`))[0]).toMatch(
      /^UNKNOWN_REFERENCE hazards\.classified-?[bB]y/u
    )
  })

  test('a decision after the release is none', () => {
    expect(problemsOf(deciding(none, 'missing data', '2026-02-07'))).toEqual([
      "DATE_ORDER status.0.on: was let go on 2026-02-06, before the decision about 'missing data' on 2026-02-07"
    ])
  })

  test('a decision is taken by a role of the producer, about a class that is known', () => {
    const files = declaring(none)
    const change = (from: string, to: string) =>
      problemsOf(withChange(files, 'batches/EB-1.yaml', from, to))
    expect(
      change('by: quality manager, on: 2026-02-06, b', 'by: nobody, on: 2026-02-06, b')[0]
    ).toMatch(/^UNKNOWN_REFERENCE hazards\.decisions\.0\.by/u)
    expect(change('because', 'class: Ox. Sol. 9, because')[0]).toMatch(
      /^UNKNOWN_WORD hazards\.decisions\.0\.class/u
    )
    expect(change('about: missing data', 'about: limit or ph')[0]).toMatch(
      /^MISSING_FIELD hazards\.decisions\.0/u
    )
  })

  test('acid found is not let go under a declaration of none', () => {
    const files = withChange(
      declaring(none),
      'batches/EB-1.yaml',
      'hazards:\n',
      'hazards:\n  residues: [{ substance: sodium hydroxide, fraction: 1.0 % }]\n'
    )
    expect(problemsOf(files).join()).toContain(
      'computed as Skin Irrit. 2, Eye Irrit. 2, which its grade does not declare'
    )
  })

  test.for([
    [
      'classified: [Eye Irrit. 2], classified-by: quality manager, precautions: [P280], basis: our own',
      []
    ],
    ['classified: [not classified], basis: our own', []],
    [
      'classified: [Eye Irritation 2], precautions: [P280], basis: our own',
      ["UNKNOWN_WORD hazards.classified.0: 'Eye Irritation 2' is no hazard class known here"]
    ],
    [
      'classified: [not classified, Eye Irrit. 2], classified-by: quality manager, precautions: [P280], basis: our own',
      ["INVALID_VALUE hazards.classified.0: 'not classified' stands beside classes"]
    ],
    [
      'classified: [Eye Irrit. 2], classified-by: quality manager, precautions: [P264], basis: our own',
      [
        'MISSING_TEXT hazards.precautions.0: P264 has a gap that the law leaves to the supplier, and no words for it'
      ]
    ],
    [
      'classified: [Eye Irrit. 2], classified-by: quality manager, basis: our own',
      [
        'MISSING_TEXT hazards.classified: P264 has a gap that the law leaves to the supplier, and no words for it'
      ]
    ],
    [
      'classified: [Eye Irrit. 2], classified-by: quality manager, fill: { P264: hands }, basis: our own',
      []
    ],
    [
      'classified: [Eye Irrit. 2], classified-by: quality manager, precautions: [P280], fill: { P264: hands }, basis: our own',
      ['MISSING_TEXT hazards.fill.P264: fills in P264, which is not among the statements']
    ],
    [
      'classified: [Eye Irrit. 2], classified-by: quality manager, precautions: [P101, P102, P233, P260, P273, P280, P310], basis: our own',
      [
        'MISSING_FIELD hazards.precautions: 7 precautionary statements are more than the 6 the law asks for'
      ]
    ],
    [
      'classified: [Eye Irrit. 2], classified-by: quality manager, precautions: [P101, P102, P233, P260, P273, P280, P310], precautions-by: quality manager, precautions-because: sold to schools, basis: our own',
      []
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
    expect(hazards?.pictograms.map(({ code }) => code)).toEqual(['GHS07'])
    expect(hazards?.computed?.sentence).toBe('Computed for this lot: not classified under CLP.')
    expect(hazards?.computed?.notes.join()).toContain(
      'by the laboratory lead about oxidising residues'
    )
    expect(hazards?.transport).not.toMatch(/not dangerous/iu)
    expect(hazards?.edition).toContain('consolidated text of 2025-09-01')
    expect(pageOf(publicSite, 'FL-26-001').document.hazards).toBeUndefined()
  })
})

describe('papers', () => {
  const flakeOf = (hazards: string, producer = '') =>
    siteOf(
      withChange(
        withChange(
          withChange(
            withChange(smallFiles, 'grades/FK-1.yaml', 'limits:', `${hazards}\nlimits:`),
            'batches/EB-1.yaml',
            'status:',
            'hazards:\n  decisions:\n    - { about: missing data, by: quality manager, on: 2026-02-06, because: seen }\nstatus:'
          ),
          'producer.yaml',
          'email:',
          `${producer}email:`
        ),
        'grades/FK-1.yaml',
        'limits:',
        'public: [results]\nlimits:'
      ),
      { edition: 'public' }
    )
  const blockOf = (...parts: [string, string?]) =>
    pageOf(flakeOf(...parts), 'EB-1').document.hazards!
  const eyes =
    'classified: [Eye Irrit. 2], classified-by: quality manager, precautions: [P280, P337+P313], basis: our own'

  test('carry the editions and languages the producer asks for, the grade’s own before', () => {
    const block = blockOf(`hazards: { ${eyes} }`, 'editions: [clp, un, us]\nlanguages: [de]\n')
    expect(
      block.editions?.map(({ title, statements }) => [title, ...statements.map(({ code }) => code)])
    ).toEqual([
      ['UN GHS, revision 10', 'H319', 'P280', 'P337+P317'],
      ['OSHA Hazard Communication Standard (United States)', 'H319', 'P280', 'P337+P313']
    ])
    expect(block.editions?.[0]).toMatchObject({ classified: ['Eye Irrit. 2A'], signal: 'Warning' })
    expect(block.languages).toMatchObject([
      {
        name: 'Deutsch',
        signal: 'Achtung',
        statements: [{ text: 'Verursacht schwere Augenreizung.' }, {}, {}]
      }
    ])
    const own = blockOf(
      `hazards: { ${eyes}, editions: [us], languages: [fr] }`,
      'editions: [clp, un]\n'
    )
    expect(own.edition).toContain('29 CFR 1910.1200')
    expect(own.editions).toBeUndefined()
    expect(own.languages).toBeUndefined()
  })

  test('never call a lot unclassified of which data are missing, though someone let it go without', () => {
    const none = 'classified: [not classified], basis: our own'
    const { computed, editions } = blockOf(`hazards: { ${none}, editions: [clp, un] }`)
    expect(computed?.sentence).toBe(
      'Computed for this lot: no class so far; the classification is incomplete.'
    )
    expect(computed?.notes.join()).toContain('about missing data: seen')
    expect(editions?.[0]?.sentence).not.toMatch(/not classified/u)
  })

  test('say who chose precautions and why', () => {
    const chosen = 'precautions-by: quality manager, precautions-because: worn anyway'
    expect(blockOf(`hazards: { ${eyes}, ${chosen} }`).basis).toContain(
      'Precautionary statements chosen by the quality manager: worn anyway.'
    )
    const wrong = (by: string) =>
      problemsOf(
        withChange(
          smallFiles,
          'grades/FK-1.yaml',
          'limits:',
          `hazards: { ${eyes}, ${by} }\nlimits:`
        )
      ).find(line => !line.startsWith('NOT_RELEASABLE'))
    expect(wrong('precautions-by: nobody, precautions-because: x')).toMatch(/^UNKNOWN_REFERENCE/u)
    expect(wrong('precautions-because: x')).toMatch(/^MISSING_FIELD hazards\.precautions-by/u)
    expect(wrong('precautions-by: quality manager')).toMatch(
      /^MISSING_FIELD hazards\.precautions-because/u
    )
  })

  test('a gap needs its words in every language asked for', () => {
    const told = (more: string) =>
      problemsOf(
        withChange(
          smallFiles,
          'grades/FK-1.yaml',
          'limits:',
          `hazards: { classified: [Eye Irrit. 2], classified-by: quality manager, precautions: [P264], fill: { P264: hands }, languages: [de]${more}, basis: our own }\nlimits:`
        )
      ).filter(line => line.startsWith('MISSING_TEXT'))
    expect(told('')).toEqual([
      "MISSING_TEXT hazards.precautions.0: P264 has a gap that the law leaves to the supplier, and no words for it in 'de'"
    ])
    expect(told(', fill-in-languages: { de: { P264: Hände } }')).toEqual([])
  })

  test('name an adviser’s decision by function, and only while it is good', () => {
    const transport = (on: string, until: string) =>
      blockOf(
        `hazards: { ${eyes}, transport: { decision: exempt by special provision, basis: tests of 2025, adviser: Quorbel, function: safety adviser, on: ${on}, until: ${until} } }`
      ).transport
    expect(transport('2026-01-05', '2027-01-04')).toBe(
      'Transport: exempt by special provision. Decided by a safety adviser on 5 January 2026, valid until 4 January 2027, on this basis: tests of 2025.'
    )
    const ask = 'ask a dangerous-goods safety adviser.'
    expect(transport('2025-01-05', '2025-12-31')).toContain(
      `${ask} An earlier decision was valid until 31 December 2025.`
    )
    expect(transport('2030-01-05', '2031-12-31')).toContain(ask)
    expect(transport('2026-01-05', '2027-01-04')).not.toContain('Quorbel')
    expect(blockOf(`hazards: { ${eyes} }`).transport).toContain(ask)
  })
})
