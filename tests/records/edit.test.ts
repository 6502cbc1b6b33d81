import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseRecord } from '../../src/records/document.ts'
import { type Change, changed, plainData, type RecordValue } from '../../src/records/edit.ts'

const edited = (text: string, ...changes: [Change['path'], Change['value']][]) =>
  changed(
    text,
    changes.map(([path, value]) => ({ path, value }))
  )

describe('a record changed in place', () => {
  test.for([
    ['a value', 'a: 1 # one\nb: 2\n', ['a'], '3', 'a: 3 # one\nb: 2\n'],
    ['a blank', 'a:\nb: 2\n', ['a'], '3', 'a: 3\nb: 2\n'],
    ['a blank before a comment', 'a: # why\nb: 2\n', ['a'], '3', 'a: 3 # why\nb: 2\n'],
    ['a new field', 'a: 1\n# end\n', ['b'], '2', 'a: 1\nb: 2\n# end\n'],
    ['a field without a line end', 'a: 1', ['b'], '2', 'a: 1\nb: 2\n'],
    ['a blank on one line', '{ a: , b: }\n', ['a'], '1 g', '{ a: 1 g, b: }\n'],
    ['a last blank on one line', 'x: { a: 1, b: }\n', ['x', 'b'], '2', 'x: { a: 1, b: 2 }\n'],
    ['a field on one line', 'x: { a: 1 }\n', ['x', 'b'], '2', 'x: { a: 1, b: 2 }\n'],
    ['an empty group', 'x: {}\n', ['x', 'b'], '2', 'x: { b: 2 }\n'],
    [
      'a field deep down',
      'x:\n  y:\n    a: 1\nz: 3\n',
      ['x', 'y', 'b'],
      '2',
      'x:\n  y:\n    a: 1\n    b: 2\nz: 3\n'
    ],
    ['a group that is not there', 'a: 1\n', ['x', 'y'], { b: '2' }, 'a: 1\nx:\n  y: { b: 2 }\n'],
    [
      'an entry',
      'x:\n  - a\n  - b # note\ny: 1\n',
      ['x', 2],
      'c',
      'x:\n  - a\n  - b # note\n  - c\ny: 1\n'
    ],
    ['an entry on one line', 'x: [a, b]\n', ['x', 2], 'c', 'x: [a, b, c]\n'],
    ['an empty entry', "x: ['', '']\n", ['x', 0], '1 g', "x: [1 g, '']\n"],
    [
      'a group as an entry',
      'x:\n  - { a: 1 }\n',
      ['x', 1],
      { a: '2' },
      'x:\n  - { a: 1 }\n  - { a: 2 }\n'
    ],
    [
      'an open group as an entry',
      'x:\n  - a: 1\n    b: 2\n',
      ['x', 1],
      { a: '2', b: '3' },
      'x:\n  - a: 1\n    b: 2\n  - a: 2\n    b: 3\n'
    ],
    ['a list', 'a: 1\n', ['x'], [{ a: '1' }, { a: '2' }], 'a: 1\nx:\n  - { a: 1 }\n  - { a: 2 }\n'],
    [
      'a list for a blank',
      'x: # here\ny: 1\n',
      ['x'],
      [{ a: '1' }],
      'x: # here\n  - { a: 1 }\ny: 1\n'
    ],
    ['a text with a comma', 'x: { a: }\n', ['x', 'a'], '1, 2', "x: { a: '1, 2' }\n"],
    ['a text with a colon', 'a:\n', ['a'], 'b: c', "a: 'b: c'\n"],
    ['a text that looks like a comment', 'a:\n', ['a'], 'b #c', "a: 'b #c'\n"],
    ['a number', 'a:\n', ['a'], '1.50', 'a: 1.50\n'],
    ['a field taken out', 'a: 1\nb: 2\nc: 3\n', ['b'], undefined, 'a: 1\nc: 3\n'],
    ['a last field taken out', 'x: { a: 1, b: 2 }\n', ['x', 'b'], undefined, 'x: { a: 1 }\n'],
    [
      'an entry taken out',
      'x:\n  - { a: 1 }\n  - { a: 2 }\n',
      ['x', 0],
      undefined,
      'x:\n  - { a: 2 }\n'
    ],
    ['a value blanked', 'a: 1 # one\n', ['a'], '', 'a:  # one\n']
  ] as const)('%s', ([, before, path, value, after]) => {
    expect(edited(before, [path, value])).toBe(after)
  })

  test('keeps CR LF and a byte order mark', () => {
    expect(edited('\uFEFFa:\r\nb: 2\r\n', [['a'], '1'], [['c'], '3'])).toBe(
      '\uFEFFa: 1\r\nb: 2\r\nc: 3\r\n'
    )
  })
})

const demo = readdirSync('content', { recursive: true, encoding: 'utf8' })
  .filter(path => /\.yaml$/u.test(path))
  .map(path => readFileSync(join('content', path), 'utf8'))

type Spot = { readonly path: (string | number)[]; readonly value: RecordValue }

/** Every field and entry of a record. */
function spotsIn(value: RecordValue, path: (string | number)[] = []): Spot[] {
  if (typeof value === 'string') return path.length > 0 ? [{ path, value }] : []
  const inside = Array.isArray(value)
    ? value.flatMap((part: RecordValue, n) => spotsIn(part, [...path, n]))
    : Object.entries(value).flatMap(([name, part]) => spotsIn(part, [...path, name]))
  return path.length > 0 ? [{ path, value }, ...inside] : inside
}

const values: fc.Arbitrary<RecordValue> = fc.oneof(
  fc.constantFrom(
    '1.50 g',
    '',
    'a: b',
    "it's",
    'x, y',
    '# no',
    '- dash',
    '[1]',
    '{ a }',
    '"q"',
    ' ',
    'yes',
    '1,5',
    'null',
    '~',
    '&a',
    '*a',
    '!t',
    '%',
    '@x',
    '`',
    '> 5',
    '|'
  ),
  fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
    .filter(text => !/[\p{C}\p{Z}]/u.test(text)),
  fc.constantFrom<RecordValue>(['1 g', '2 g'], { a: '1 g', b: 'x: y' }, [{ a: '1 g' }, { a: '' }])
)

/** Comments put wherever a line may have one. */
const commented = (text: string) =>
  text.replace(/^(?!#)(.*[^|>\s])$/gmu, (line, _, at: number) =>
    at % 3 === 0 ? `${line} # note ${at}` : line
  )

// `changed` itself refuses to lose a comment or to read otherwise than it was told.
test('whatever is changed in the demo records, the rest stays and comments with it', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...demo),
      fc.array(
        fc.record({ at: fc.nat(), value: values, how: fc.constantFrom('set', 'add', 'out') }),
        { minLength: 1, maxLength: 4 }
      ),
      (text, steps) => {
        let now = commented(text)
        for (const { at, value, how } of steps) {
          const spots = spotsIn(plainData(now))
          const spot = spots[at % spots.length]!
          const isGroup = typeof spot.value === 'object' && !Array.isArray(spot.value)
          const path =
            how !== 'add'
              ? spot.path
              : isGroup
                ? [...spot.path, 'new']
                : Array.isArray(spot.value)
                  ? [...spot.path, spot.value.length]
                  : ['new-field']
          // A group or list is filled field by field, not written over.
          if (how === 'set' && typeof spot.value !== 'string') continue
          const before = now
          now = changed(now, [{ path, value: how === 'out' ? undefined : value }])
          const kept = before.split('\n').filter(line => !now.split('\n').includes(line))
          expect(kept.length).toBeLessThan(before.split('\n').length)
        }
        expect(
          parseRecord({ path: 'x.yaml', text: now }).problems.filter(
            ({ code }) => code === 'YAML_SYNTAX'
          )
        ).toEqual([])
      }
    ),
    { numRuns: 150, seed: 11 }
  )
})

test('an entry of a list in brackets that is blanked keeps its place', () => {
  const path = ['languages', 1]
  expect(changed('languages: [de, fr, es] # ours\n', [{ path, value: '' }])).toBe(
    "languages: [de, '', es] # ours\n"
  )
  expect(changed("languages: [de, '', es]\n", [{ path, value: 'it' }])).toBe(
    'languages: [de, it, es]\n'
  )
})
