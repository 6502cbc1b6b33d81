import { describe, expect, test } from 'vitest'
import { type Change, changed } from '../../src/records/edit.ts'

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
