/** A record read into a form, and written back from it. */

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { changesOf, removalOf } from '../../src/forms/changes.ts'
import { pointer } from '../../src/forms/names.ts'
import { formOf, type ValuePart, valuesOf } from '../../src/forms/parts.ts'
import { namesFor } from '../../src/forms/references.ts'
import { shapeOf } from '../../src/forms/shape.ts'
import { changed, plainData, type RecordValue } from '../../src/records/edit.ts'
import { kindOf } from '../../src/records/kinds.ts'
import { projectFolder } from '../../src/site/project.ts'

const content = join(projectFolder, 'content')
const records = readdirSync(content, { recursive: true, encoding: 'utf8' })
  .filter(path => path.endsWith('.yaml'))
  .sort()
  .map(path => ({
    path: `content/${path}`,
    text: readFileSync(join(content, path), 'utf8')
  }))
  .flatMap(file => {
    const kind = kindOf(file)
    return kind ? [{ ...file, kind }] : []
  })

type Record = (typeof records)[number]

const formFor = ({ kind, text }: Pick<Record, 'kind' | 'text'>, shown: readonly string[] = []) =>
  formOf(shapeOf(kind), plainData(text), shown)

/** What a browser sends of a form, with some fields filled in otherwise. */
const sentOf = (values: readonly ValuePart[], other: Readonly<{ [name: string]: string }> = {}) =>
  new Map([
    ...values.map(({ path, value }) => [pointer(path), value.replaceAll('\n', '\r\n')] as const),
    ...Object.entries(other)
  ])

/** What stands at a path of a record. */
const at = (data: RecordValue, path: ValuePart['path']): unknown =>
  path.reduce<unknown>(
    (value, step) => (value as { [step: string | number]: unknown } | undefined)?.[step],
    data
  )

const names = new Map<string, ReadonlySet<string>>()

const offered = (reference: string): ReadonlySet<string> => {
  const known = names.get(reference) ?? new Set(namesFor(reference, records))
  names.set(reference, known)
  return known
}

/** Every text of a record that says something. */
const textsIn = (data: RecordValue): string[] =>
  typeof data === 'string' ? (data === '' ? [] : [data]) : Object.values(data).flatMap(textsIn)

describe('of every record of the demo', () => {
  test.for(records)(
    '$path: the form holds every value, and sent as it is changes nothing',
    file => {
      const form = formFor(file)
      const values = valuesOf(form)
      expect(values.flatMap(({ value }) => (value === '' ? [] : [value])).sort()).toEqual(
        textsIn(plainData(file.text)).sort()
      )
      expect(values.every(({ isFixed }) => !isFixed)).toBe(true)
      expect(changesOf(form, sentOf(values))).toEqual([])
      expect(new Set(values.map(({ path }) => pointer(path))).size).toBe(values.length)
    }
  )

  test('what names a record is among the names offered', () => {
    const strange = records.flatMap(file =>
      valuesOf(formFor(file)).flatMap(({ value, reference, path }) =>
        reference === undefined || value === '' || offered(reference).has(value)
          ? []
          : [`${file.path} ${pointer(path)} ${value}`]
      )
    )
    expect(strange).toEqual([])
  })

  test('lots, containers and vessels are chosen from, and no record’s own number is', () => {
    const of = (path: string, field: string) => {
      const file = records.find(one => one.path === `content/${path}`)!
      const part = valuesOf(formFor(file)).find(one => pointer(one.path) === field)
      return part?.reference
    }
    expect([
      of('certificates/CT-26-001-r1.yaml', '/lot'),
      of('complaints/CP-26-01.yaml', '/lot'),
      of('panels/PN-26-03.yaml', '/lot'),
      of('shipments/SH-26-02.yaml', '/contents/0/lot'),
      of('expansions/XR-26-01.yaml', '/from/0/lot')
    ]).toEqual(Array(5).fill('lot'))
    expect(of('batches/EB-26-015.yaml', '/charge/1/container')).toBe('container')
    expect(of('batches/EB-26-015.yaml', '/vessel')).toBe('vessel')
    expect([
      of('batches/EB-26-015.yaml', '/lot'),
      of('certificates/CT-26-001-r1.yaml', '/number'),
      of('complaints/CP-26-01.yaml', '/number')
    ]).toEqual([undefined, undefined, undefined])
    expect(namesFor('container', records)).toEqual(['Quibblecan-1', 'Quibblecan-2'])
    expect(namesFor('vessel', records)).toEqual(['V-1', 'V-2'])
  })
})

const comments = (text: string) => [...text.matchAll(/(?<=^|\s)#.*$/gmu)].map(([all]) => all).sort()

/** What people and accidents put into a field. */
const entry = fc.oneof(
  fc.constantFrom(
    '1.34 mL',
    '1,34 mL',
    '5 °C',
    'released',
    '#',
    "'",
    '- a',
    '{ a: b }',
    'a: b',
    '~'
  ),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
  fc.constantFrom('yes', 'null', '[1]', 'two\nlines', '&a', '*a', '!!x', '%', '@', '|', '>', '"')
)

describe('what is filled in', () => {
  test('is what the record says afterwards, with all else and every comment as it was', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...records),
        fc.array(fc.tuple(fc.nat(), entry), { minLength: 1, maxLength: 6 }),
        (file, picks) => {
          const commented = file.text.replace(/^(\w.*)$/mu, '$1 # kept')
          const form = formFor({ ...file, text: commented })
          const values = valuesOf(form)
          // Rows that are empty are looked at below: they close up.
          const data = plainData(file.text)
          const written = values.filter(({ path }) => at(data, path) !== undefined)
          const filled = new Map(
            picks.map(([pick, text]) => [written[pick % written.length]!, text.trim()] as const)
          )
          const named = [...filled]
            .filter(([, text]) => text !== '')
            .map(([{ path }, text]) => [pointer(path), text] as const)
          const changes = changesOf(form, sentOf(values, Object.fromEntries(named)))
          const after = changes.length > 0 ? changed(commented, changes) : commented
          const again = valuesOf(formFor({ ...file, text: after }))
          const expected = sentOf(values, Object.fromEntries(named))
          for (const { path, value } of again)
            expect([pointer(path), value]).toEqual([
              pointer(path),
              expected.get(pointer(path))?.replaceAll('\r\n', '\n') ?? ''
            ])
          expect(comments(after)).toEqual(expect.arrayContaining(comments(commented)))
        }
      ),
      { numRuns: Number(process.env.FORM_RUNS ?? 60) }
    )
  })

  const batch = `# head
lot: EB-1
grade: flake-250 # the usual
made: 2026-01-20
charge:
  - { material: GR-1, as: graphite, mass: 90 g } # dry
  - { material: SA-1, as: acid, mass: 267 g }
product: { mass: 109 g }
tests:
  free-acid:
    tested: 2026-01-23
    blanks: [0.04 mL, 0.05 mL]
    readings:
      - { mass: 10 g, titre: 1.3 mL } # first
`
  const filledIn = (other: { [name: string]: string }, shown: readonly string[] = []) => {
    const form = formFor({ kind: 'batches', text: batch }, shown)
    const changes = changesOf(form, sentOf(valuesOf(form), other))
    return changed(batch, changes)
  }

  test('empty rows close up behind those there are', () => {
    const text = filledIn({
      '/charge/3/material': 'OX-1',
      '/charge/3/as': 'oxidiser',
      '/tests/free-acid/blanks/3': '0.06 mL',
      '/tests/free-acid/readings/1/titre': '1.31 mL'
    })
    expect(text).toBe(
      batch
        .replace('267 g }\n', '267 g }\n  - { material: OX-1, as: oxidiser }\n')
        .replace('0.05 mL]', '0.05 mL, 0.06 mL]')
        .replace('# first\n', '# first\n      - { titre: 1.31 mL }\n')
    )
  })

  test('a part that was not there is put in as a whole', () => {
    const text = filledIn(
      { '/sampling/on': '2026-01-22', '/tests/ash/tested': '2026-01-26', '/notes': 'calm' },
      ['/sampling', '/tests/ash']
    )
    expect(plainData(text)).toEqual({
      ...(plainData(batch) as object),
      notes: 'calm',
      sampling: { on: '2026-01-22' },
      tests: { ...(at(plainData(batch), ['tests']) as object), ash: { tested: '2026-01-26' } }
    })
    expect(comments(text)).toEqual(comments(batch))
  })

  test('a blanked field stays, a blanked entry and a part taken out go', () => {
    const text = filledIn({
      '/made': '',
      '/tests/free-acid/blanks/0': '',
      [removalOf(['charge', 1])]: 'on'
    })
    expect(text).toBe(
      batch
        .replace('made: 2026-01-20', 'made: ')
        .replace('0.04 mL, ', '')
        .replace('  - { material: SA-1, as: acid, mass: 267 g }\n', '')
    )
  })

  test('fields that were not sent, and names no form has, change nothing', () => {
    const form = formFor({ kind: 'batches', text: batch })
    expect(changesOf(form, new Map([['/lotus/0', 'x']]))).toEqual([])
  })

  test('what has another shape than it should is offered as it stands, and lost by nothing', () => {
    const text =
      'lot: EB-1\ncharge: all of it\nproduct: [109 g]\nmade: { year: 2026 }\nodd name: x\n'
    const form = formFor({ kind: 'batches', text })
    const values = valuesOf(form)
    const told = Object.fromEntries(
      values.flatMap(({ path, value }) => (value === '' ? [] : [[pointer(path), value]]))
    )
    expect(told).toEqual({
      '/lot': 'EB-1',
      '/charge': 'all of it',
      '/product/0': '109 g',
      '/made/year': '2026',
      '/odd name': 'x'
    })
    expect(changesOf(form, sentOf(values))).toEqual([])
  })

  test('signs that a browser would lose are not offered to be lost', () => {
    const text = 'lot: EB-1\nnotes: "a\\u0001b"\n'
    const form = formFor({ kind: 'batches', text })
    expect(valuesOf(form).filter(({ isFixed }) => isFixed)).toHaveLength(1)
    expect(changesOf(form, new Map([['/notes', 'ab']]))).toEqual([])
  })
})
