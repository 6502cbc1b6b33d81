/** What pages lack of a language is found without wording their figures: the same as by wording them all. */

import { describe, expect, test } from 'vitest'
import { noRegister } from '../../src/documents/issued.ts'
import { homeLanguage, tongueFor } from '../../src/documents/languages/records.ts'
import type { Lack } from '../../src/documents/languages/tongue.ts'
import { siteDocument } from '../../src/documents/site.ts'
import { siteLanguages } from '../../src/documents/site-forms.ts'
import type { SiteInputs } from '../../src/documents/site-inputs.ts'
import { judgeContent } from '../../src/pipeline.ts'
import { formatProblem, type SourceFile } from '../../src/problem.ts'
import type { PaperLanguage } from '../../src/records/schemas/common.ts'
import { readPictures } from '../../src/site/read-pictures.ts'
import { generateWorkshop } from '../bench/generate.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'
import { demoRegister } from './demo-register.ts'

const pictures = await readPictures('content')

/** Every page of the site worded in full, its figures and charts with it. */
function byWordingAll(inputs: SiteInputs, language: PaperLanguage): Lack[] {
  const { content } = inputs.evaluated
  if (language === 'en' && homeLanguage(content) === 'en') return []
  const lacking = new Map<string, Lack>()
  const tongue = tongueFor(content, language, lack => lacking.set(lack.text, lack))
  const site = siteDocument({ ...inputs, tongue })
  for (const pages of [site.lots, site.watches]) for (const _page of pages) continue
  return [...lacking.values()]
}

const lines = (lacks: readonly Lack[]) => lacks.map(({ is, text }) => `${is}: ${text}`).sort()

/** What each language of the pages lacks, both ways. */
function lacksOf(files: readonly SourceFile[], asOf?: string, isIssued = false) {
  const register = isIssued ? demoRegister : noRegister
  const judgement = judgeContent(files, asOf, register)
  const { evaluated, lacks } = judgement
  if (!evaluated || !lacks) throw new Error(judgement.problems.map(formatProblem).join('\n'))
  const inputs: SiteInputs = {
    ...judgement,
    evaluated,
    edition: 'public',
    paper: 'A4',
    register,
    pictures
  }
  return siteLanguages(evaluated.content, 'public').map(language => ({
    language,
    found: lines(lacks.on(inputs, language)),
    all: lines(byWordingAll(inputs, language))
  }))
}

const replaced = (files: readonly SourceFile[], in_: string, from: RegExp, to: string) =>
  files.map(file =>
    file.path.includes(in_) ? { ...file, text: file.text.replace(from, () => to) } : file
  )

const saying = (files: readonly SourceFile[], text: string) =>
  replaced(files, 'producer.yaml', /^paper: A4$/mu, `paper: A4\n${text}`)

const untranslated = (files: readonly SourceFile[]) =>
  files.filter(({ path }) => !path.includes('/translations/'))

/** Some of the translations, by chance: the same for the same number. */
const partly = (files: readonly SourceFile[], seed: number) =>
  files.map(file => {
    if (!file.path.includes('/translations/')) return file
    let state = seed
    const isKept = () => (state = (state * 48_271) % 2_147_483_647) % 2 === 0
    const [head = '', ...texts] = file.text.split(/^(?= {2}- )/mu)
    return { ...file, text: [head, ...texts.filter(isKept)].join('') }
  })

/** A lot with a residue that only its record and a supplier's sheet name. */
const withResidue = (files: readonly SourceFile[]) =>
  (
    [
      ['batches/EB-26-015', 'hazards', 'residues: [{ substance: gronzel resin, fraction: 12 % }]'],
      ['materials/OX-26-03', 'composition', '- { substance: gronzel resin, fraction: 1 % }'],
      [
        'materials/OX-26-03',
        'classification',
        '- { substance: gronzel resin, classes: [{ class: Eye Dam. 1 }] }'
      ]
    ] as const
  ).reduce(
    (before, [file, field, line]) =>
      withChange(before, `${file}.yaml`, `\n${field}:\n`, `\n${field}:\n  ${line}\n`),
    files
  )

const bare = untranslated(demoFiles)
const both = saying(bare, 'site-languages: [en, de]')

/** What a grade may show; its working not without its results. */
const shownParts = [
  'results',
  'results, working',
  'chain',
  'sampling',
  'quantity',
  'panels',
  'pictures'
]

/** Expect the same of both ways, and no fewer than so many; all that is lacking. */
function expectAlike(lacks: ReturnType<typeof lacksOf>, fewest = 1): string[] {
  for (const { language, found, all } of lacks) expect(found, language).toEqual(all)
  const lacking = lacks.flatMap(({ all }) => all)
  expect(lacking.length).toBeGreaterThanOrEqual(fewest)
  return lacking
}

describe('what pages lack is found as by wording all of them', () => {
  test('where nothing of the demo is translated', () => {
    expectAlike(lacksOf(both, undefined, true), 150)
  })

  test('on earlier days, with nothing issued', () => {
    expectAlike(lacksOf(both, '2026-03-31'), 50)
  })

  test('where some of it is, drawn by chance', () => {
    const files = partly(saying(demoFiles, 'site-languages: [de]'), 1)
    expectAlike(lacksOf(files, undefined, true), 50)
  })

  test('where a statement has no words in the language', () => {
    const files = replaced(
      saying(demoFiles, 'site-languages: [de]'),
      'flake-250-r3',
      /P337\+P313\]$/mu,
      'P337+P313, P501]\n  fill: { P501: a works that is licensed for it }'
    )
    expect(expectAlike(lacksOf(files))).toContain('statement: P501')
  })

  test('in English, of records in German: of previews too where no certificate was issued', () => {
    expectAlike(lacksOf(saying(bare, 'written-in: de\nsite-languages: [en, de]')), 150)
  })

  test.for([0, 1, 2])('where each grade shows another part, begun with part %i', first => {
    let next = first
    const files = both.map(file =>
      file.path.includes('/grades/')
        ? {
            ...file,
            text: file.text.replace(
              /^public: .*$/mu,
              () => `public: [${shownParts[next++ % shownParts.length]!}]`
            )
          }
        : file
    )
    expectAlike(lacksOf(files))
  })

  test('where a reason names a substance, but not of lots without any figure', () => {
    const files = withResidue(both)
    expect(expectAlike(lacksOf(files))).toContain('text: gronzel resin')
    const unlimited = replaced(files, '/grades/', /^limits:\n(?: .*\n)+/mu, 'limits: {}\n')
    const unasked = replaced(
      unlimited,
      '/grades/',
      /^(?:measured|typical|retest|retest-after-months):.*\n(?: .*\n)*/gmu,
      ''
    )
    const unmeasured = replaced(unasked, '/batches/', /^(?:tests|reported):\n(?: .*\n)+/gmu, '')
    expect(expectAlike(lacksOf(unmeasured))).not.toContain('text: gronzel resin')
  })

  test('of generated lots', () => {
    expectAlike(lacksOf(saying(generateWorkshop(7), 'site-languages: [de, en]')), 50)
  })
})
