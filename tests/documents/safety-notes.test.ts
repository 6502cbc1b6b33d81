/** What datasheets say of hazards beyond the label: each line with its source, and who decides. */

import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { english } from '../../src/documents/languages/tongue.ts'
import { safetyNotes } from '../../src/documents/safety-notes.ts'
import { agents } from '../../src/hazards/exposure.ts'
import file from '../../src/hazards/product-cautions.json' with { type: 'json' }
import { unparted } from '../../src/documents/words.ts'
import { publicSite, siteOf } from './demo.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'

const gradeOf = (id: string, site = publicSite) => site.grades.find(one => one.id === id)!
const flake = gradeOf('flake-250').safety
const foil = gradeOf('foil-100').safety
const textsOf = (notes: typeof flake, heading: string) =>
  notes.sections.find(section => section.heading === heading)?.texts.join('\n') ?? ''

test('the file has the shape its type says, and names agents that exist', () => {
  const cited = { source: z.string().min(10), sure: z.enum(['print', 'second hand', 'memory']) }
  const line = z.strictObject({ text: z.string().regex(/^[A-Z].*[^.]$/u), ...cited })
  const agent = z.enum(agents.map(({ id }) => id))
  const product = z.strictObject({
    substance: z.string(),
    handling: z.array(line).min(1),
    incompatible: z.array(line).min(1),
    gases: z.array(line.extend({ agents: z.array(agent).min(1) })).min(1),
    disposal: z.array(line).min(1)
  })
  expect(z.strictObject({ flake: product, foil: product }).safeParse(file).error).toBeUndefined()
})

describe('a datasheet', () => {
  test('names gases, what must not meet, and waste, each with its source', () => {
    expect(textsOf(flake, 'Gases that can come off')).toMatch(
      /Sulfur dioxide .*Sulfur trioxide .*Nitrogen oxides /su
    )
    expect(textsOf(flake, 'Never together with')).toMatch(/Strong oxidisers.*Bases/su)
    expect(textsOf(flake, 'Waste')).toContain('local law decides')
    expect(textsOf(foil, 'Never together with')).toContain('molten nitrates')
    expect(textsOf(foil, 'Article')).toMatch(/^Taken as an article, .*\(.{10,}\)\. Stated by /u)
    const unsourced = ['Dust', 'Carriage', 'Article']
    for (const { heading, texts } of [...flake.sections, ...foil.sections])
      for (const text of texts.filter(() => !unsourced.includes(heading)))
        expect(text).toMatch(/\(.{10,}\)\.$/u)
  })

  test('says the same whichever oxidiser went in', () => {
    expect(gradeOf('flake-200').safety.sections).toEqual(flake.sections)
  })

  test('gives limits of exposure with issuer, year and how surely they were read', () => {
    const { rows } = flake.exposure
    const rowsOf = (name: string) => rows.filter(([of]) => of!.startsWith(name))
    expect(rowsOf('sulfuric acid, mist')[0]).toEqual([
      'sulfuric acid, mist, thoracic fraction',
      '0.05\u00a0mg/m³',
      '8\u00a0h',
      'European Union, Directive 2009/161/EU, 2009'
    ])
    for (const name of ['graphite dust', 'quartz', 'sulfur dioxide', 'nitrogen dioxide'])
      expect(rowsOf(name)).not.toEqual([])
    expect(rowsOf('graphite dust')[0]).toEqual([
      'graphite dust, natural graphite',
      '15 million particles per cubic foot',
      '8\u00a0h',
      'OSHA, 29 CFR 1910.1000 Table Z-3, 1994 (NIOSH, documentation for IDLH values, May 1994; quoted at second hand)'
    ])
    for (const [, , , issuer] of rows) expect(issuer).toMatch(/, (?:19|20)\d\d(?: \(.*\))?$/u)
    expect(rows.map(row => row.join()).join('\n')).toContain('from memory, not checked')
    expect(foil.exposure.rows.map(([of]) => of).join()).not.toContain('sulfuric acid')
  })

  test('defers to competent persons, and is never called a safety data sheet', () => {
    for (const { safety } of publicSite.grades) {
      expect(safety.disclaimer).toBe(english.safety.disclaimer)
      const said = JSON.stringify(safety).replaceAll('not a legal classification, safety data', '')
      expect(said).not.toMatch(/safety data/iu)
      expect(said).not.toMatch(/not dangerous/iu)
    }
    for (const who of ['dangerous-goods safety adviser', 'occupational hygienist', 'licensed'])
      expect(english.safety.disclaimer).toContain(who)
  })

  test('says whom to ask about carriage, beside its hazards or where none are declared', () => {
    const ask = 'ask a dangerous-goods safety adviser'
    for (const { hazards, safety } of publicSite.grades)
      expect(hazards?.transport ?? textsOf(safety, 'Carriage')).toMatch(
        /a dangerous-goods safety adviser/u
      )
    const bare = {
      id: 'F',
      revision: 1,
      validFrom: '2026-01-01',
      title: 'F',
      kind: 'foil'
    } as const
    const notes = safetyNotes({ ...bare, description: 'F', limits: {} }, '2026-10-01')
    expect(textsOf(notes, 'Carriage')).toContain(ask)
  })

  test('tells what a dust test showed', () => {
    const tested = (dust: string) => {
      const path = 'grades/flake-250-r3.yaml'
      const files = withChange(demoFiles, path, '\nhazards:\n', `\nhazards:\n  dust: ${dust}\n`)
      const lots =
        /content\/(batches|expansions|foils|certificates|shipments|complaints|waste|incidents|panels)\//u
      const few = files.filter(one => !lots.test(one.path))
      return textsOf(gradeOf('flake-250', siteOf(few, { edition: 'public' })).safety, 'Dust')
    }
    expect(textsOf(flake, 'Dust')).toMatch(
      /in air\. Not excluded by a dust test; 29 CFR [^;]*\(from memory, not checked against the print\)\./u
    )
    expect(tested('combustible')).toContain('in air. Dust test positive; 29 CFR')
    expect(tested('not combustible')).toBe('A dust test excluded combustible dust.')
    expect(textsOf(foil, 'Dust')).toContain('If small particles are generated')
  })
})

test.for([
  ['jar, 50 to 150 g', 'jar, 50\u00a0to\u00a0150\u00a0g'],
  ['5 °C to 40 °C, dry', '5\u00a0°C\u00a0to\u00a040\u00a0°C, dry'],
  ['6 of about 10 g to be', '6 of about 10\u00a0g to be'],
  ['2 to 3 lots', '2 to 3 lots'],
  ['at 0.5 ppm (1.3 mg/m³)', 'at 0.5\u00a0ppm (1.3\u00a0mg/m³)']
] as const)('%s is not parted at a line’s end', ([text, held]) => {
  expect(unparted(text)).toBe(held)
})
