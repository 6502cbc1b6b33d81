/** Foil as an article: a competent person's statement, what overturns it, and its absence. */

import { describe, expect, test } from 'vitest'
import { buildDocuments, judgeContent } from '../../src/pipeline.ts'
import { formatProblem, type SourceFile } from '../../src/problem.ts'
import { problemsOf, smallFiles, withChange } from '../records-on-disk.ts'

const said =
  'statement: shape decides its function, basis: trials of 2025, person: Odalric Snibbleforth, function: product safety adviser, on: 2026-01-05'

/** The small workshop, its foil grade with more fields. */
const withGrade = (more: string) =>
  withChange(smallFiles, 'grades/FF-1.yaml', 'limits:', `public: [results]\n${more}limits:`)
const stating = (more = '') => withGrade(`article: { ${said}${more} }\n`)
const reporting = (files: readonly SourceFile[], key: string, value: string) =>
  withChange(
    files,
    'foils/FL-1.yaml',
    'status:',
    `reported:\n  ${key}: { laboratory: Cawdle, report: R-1, date: 2026-02-13, method: own, ${value} }\nstatus:`
  )
const deciding = (files: readonly SourceFile[], by = 'quality manager', on = '2026-02-14') =>
  withChange(
    files,
    'foils/FL-1.yaml',
    'status:',
    `hazards:\n  decisions:\n    - { about: article, by: ${by}, on: ${on}, because: leached again and found low }\nstatus:`
  )

function siteOf(files: readonly SourceFile[]) {
  const { site, problems } = buildDocuments(files, { edition: 'public' })
  if (!site) throw new Error(problems.map(formatProblem).join('\n'))
  return site
}

const page = (files: readonly SourceFile[]) =>
  siteOf(files).lots.find(({ document }) => document.lot === 'FL-1')!
const factOf = (files: readonly SourceFile[]) =>
  page(files).document.facts.find(({ label }) => label === 'Article')?.text
const notesOf = (files: readonly SourceFile[]) =>
  siteOf(files)
    .grades.find(({ id }) => id === 'FF-1')!
    .safety.sections.find(({ heading }) => heading === 'Article')!
    .texts.join(' ')

const acid = ', at-most: { leachable-acid: 0.05 % }'

describe('the statement', () => {
  test('is told by the function of who made it, with basis, day and clause, and no name', () => {
    expect(factOf(stating(', until: 2027-01-04'))).toBe(
      'Stated by a product safety adviser on 5 January 2026, valid until 4 January 2027: shape decides its function. Basis: trials of 2025.'
    )
    expect(notesOf(stating())).toContain(
      'Regulation (EC) No 1907/2006 (REACH), article 3(3) (from memory, not checked against the print)'
    )
    expect(JSON.stringify(siteOf(stating()))).not.toContain('Snibbleforth')
  })

  test('names what would overturn it', () => {
    expect(notesOf(reporting(stating(acid), 'leachable-acid', 'less-than: 0.05 %'))).toContain(
      'which each lot is held to: leachable acid as H₂SO₄ at most 0.05\u00a0%.'
    )
    expect(notesOf(stating())).toContain('may overturn this: the statement names no limit')
  })

  test('is said to be absent, or not in force', () => {
    expect(notesOf(withGrade(''))).toBe(
      'No competent person’s statement that this foil is an article is recorded: whether it has to be classified and labelled as a mixture is open.'
    )
    expect(notesOf(deciding(stating(', until: 2026-01-31')))).toContain('is in force')
    expect(factOf(withGrade(''))).toBeUndefined()
  })

  test.for([
    ['of flake', 'grades/FK-1.yaml', `${said}`, 'INVALID_VALUE article'],
    [
      'ending before it begins',
      'grades/FF-1.yaml',
      `${said}, until: 2026-01-04`,
      'DATE_ORDER article.until'
    ],
    [
      'without its basis',
      'grades/FF-1.yaml',
      said.replace('basis: trials of 2025, ', ''),
      'MISSING_FIELD article.basis'
    ],
    [
      'without a function',
      'grades/FF-1.yaml',
      said.replace('function: product safety adviser, ', ''),
      'MISSING_FIELD article.function'
    ]
  ] as const)('%s is refused', ([, path, block, problem]) => {
    const files = withChange(smallFiles, path, 'limits:', `article: { ${block} }\nlimits:`)
    expect(problemsOf(files)[0]).toMatch(new RegExp(`^${problem.replace('.', '\\.')}`, 'u'))
  })
})

describe('a lot', () => {
  const cannot = 'NOT_RELEASABLE status.0.is: cannot be let go: '

  test('stands under a statement without conditions', () => {
    expect(problemsOf(stating())).toEqual([])
  })

  test('that is open is never said to be an article', () => {
    const lotOf = (files: readonly SourceFile[]) =>
      judgeContent(files).lots.find(({ evaluated }) => evaluated.lot === 'FL-1')!.hazards!
    expect(lotOf(stating()).classification).toMatchObject({ state: 'complete' })
    expect(lotOf(stating()).classification.article).toContain('outside the rules')
    const open = lotOf(stating(acid)).classification
    expect([open.state, open.article]).toEqual(['incomplete', undefined])
    expect(lotOf(deciding(stating(acid))).classification.article).toContain('outside the rules')
  })

  test('whose leachables were not measured is open', () => {
    expect(problemsOf(stating(acid))).toEqual([
      `${cannot}leachable acid as H₂SO₄, on which the statement that it is an article rests, was not measured`
    ])
    expect(
      factOf(
        reporting(
          stating(acid),
          'leachable-acid',
          'value: 0.02 %, expanded-uncertainty: 0.010 %, coverage-factor: 2'
        )
      )
    ).toContain('Stated by')
  })

  test.for([
    ['value: 0.02 %, expanded-uncertainty: 0.010 %, coverage-factor: 2', undefined],
    ['less-than: 0.05 %', undefined],
    ['less-than: 0.06 %', '0.06 %'],
    // 0.045 % and U of 0.01 %: the limit lies within the uncertainty.
    ['value: 0.045 %, expanded-uncertainty: 0.010 %, coverage-factor: 2', '0.05'],
    ['value: 0.08 %, expanded-uncertainty: 0.010 %, coverage-factor: 2', '0.08']
  ] as const)('with leachable acid of %s', ([value, told]) => {
    const problems = problemsOf(reporting(stating(acid), 'leachable-acid', value))
    if (told === undefined) expect(problems).toEqual([])
    else {
      expect(problems).toHaveLength(1)
      expect(problems[0]).toContain(`${cannot}leachable acid as H₂SO₄ may be as high as ${told}`)
      expect(problems[0]).toContain('stated to be an article up to 0.05 %')
    }
  })

  test('that is open is let go where a role says why, not later and nobody else', () => {
    const open = stating(acid)
    expect(problemsOf(deciding(open))).toEqual([])
    expect(problemsOf(deciding(open, 'nobody'))[0]).toMatch(
      /^UNKNOWN_REFERENCE hazards\.decisions\.0\.by/u
    )
    expect(problemsOf(deciding(open, 'quality manager', '2026-02-15'))[0]).toMatch(/^DATE_ORDER/u)
  })

  test('of a grade that declares hazards without a statement is open, never not classified', () => {
    const declared = withGrade('hazards: { classified: [not classified], basis: our own }\n')
    expect(problemsOf(declared)).toEqual([
      `${cannot}no competent person has stated that it is an article`
    ])
    const { hazards } = page(deciding(declared)).document
    expect(hazards?.computed?.sentence).toMatch(/^Nothing is computed: foil is an article/u)
    expect(hazards?.computed?.notes.join()).toContain('about what it is: leached again')
  })

  test('made before the statement, or after it ended, is open', () => {
    for (const on of ['on: 2026-03-01', 'on: 2026-01-05, until: 2026-02-01'])
      expect(
        problemsOf(withGrade(`article: { ${said.replace('on: 2026-01-05', on)} }\n`))[0]
      ).toContain('the statement that it is an article is not in force')
  })
})
