/**
 * Sizes that keep the source readable. The figures are the project's own: those of the small
 * libraries whose source reads best.
 */

import ts from 'typescript'
import { describe, expect, test } from 'vitest'
import { nodesOf, parseSource, type Source, sources } from './source-files.ts'

const linesIn = ({ text }: Source) => text.split('\n').length - 1

interface Sized {
  readonly name: string
  readonly lines: number
}

/** Functions with a body of their own, however they are written. */
const functionsOf = ({ path, tree }: Source): Sized[] =>
  nodesOf(tree).flatMap(node => {
    if (!ts.isFunctionLike(node) || !('body' in node) || !node.body) return []
    const from = tree.getLineAndCharacterOfPosition(node.getStart()).line
    const to = tree.getLineAndCharacterOfPosition(node.getEnd()).line
    return [{ name: `${path}:${from + 1}`, lines: to - from + 1 }]
  })

/** The value below which `part` of the values lie: the nearest rank. */
function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.max(0, Math.ceil(part * sorted.length) - 1)]!
}

const functions = sources.flatMap(functionsOf)
const fileLines = sources.map(linesIn)
const functionLines = functions.map(({ lines }) => lines)

describe('files', () => {
  test('none is longer than 400 lines', () => {
    const long = sources.filter(source => linesIn(source) > 400).map(({ path }) => path)
    expect(long).toEqual([])
  })

  test('19 of 20 have at most 300 lines, half of them at most 90', () => {
    expect(quantile(fileLines, 0.95)).toBeLessThanOrEqual(300)
    expect(quantile(fileLines, 0.5)).toBeLessThanOrEqual(90)
  })
})

describe('functions', () => {
  test('19 of 20 have at most 45 lines, half of them at most 12', () => {
    expect(quantile(functionLines, 0.95)).toBeLessThanOrEqual(45)
    expect(quantile(functionLines, 0.5)).toBeLessThanOrEqual(12)
  })

  test('none is longer than 45', () => {
    expect(functions.filter(({ lines }) => lines > 45)).toEqual([])
  })
})

/** Ways round the type checker. */
const loopholes = ({ path, text, tree }: Source): string[] => [
  ...[...nodesOf(tree)]
    .filter(node => node.kind === ts.SyntaxKind.AnyKeyword)
    .map(node => `${path}: ${node.parent.getText()}`),
  ...(text.match(/@ts-(?:ignore|expect-error|nocheck)/gu) ?? []).map(found => `${path}: ${found}`)
]

describe('types', () => {
  test('nothing goes round the type checker', () => {
    expect(sources.flatMap(loopholes)).toEqual([])
  })

  test.for([
    ['let a: any'],
    ['const a = b as any'],
    ['type A = Record<string, any>'],
    ['// @ts-ignore'],
    ['/* @ts-expect-error */'],
    ['// @ts-nocheck']
  ] as const)('%s would be found', ([text]) => {
    expect(loopholes(parseSource('src/a.ts', text))).toHaveLength(1)
  })

  test('the word in a comment or a name is no type', () => {
    expect(loopholes(parseSource('src/a.ts', '// any\nconst anyone = 1'))).toEqual([])
  })
})

describe('the measuring', () => {
  test('counts every kind of function', () => {
    const text = 'function a() {\n}\nconst b = () => 1\nclass C {\n  d() {\n    return 1\n  }\n}\n'
    const found = functionsOf(parseSource('src/a.ts', text)).map(({ lines }) => lines)
    expect(found).toEqual([2, 1, 3])
  })

  test('finds quantiles by the nearest rank', () => {
    const values = Array.from({ length: 20 }, (_, index) => 20 - index)
    expect([quantile(values, 0.5), quantile(values, 0.95)]).toEqual([10, 19])
  })
})
