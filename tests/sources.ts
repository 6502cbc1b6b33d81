/**
 * Which rows of the tests come from outside, and from where: `npm run sources`.
 *
 * A row is one element of a table that `test.for` or `test.each` runs through, or one line of a file in a
 * folder `outside`, where the comment right above it, or the title of it or of a group it stands in, names a
 * source. Single tests that name one are counted apart: some hold a published figure, some only a
 * published rule. What a comment says was worked by hand is not from outside. Files of input data
 * (`# input:`) are no rows; a table built by code counts as one. Counted by reading the tests, so what is
 * skipped for want of a tool counts as well.
 */

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { root } from './root.ts'
import { nodesOf } from './source-files.ts'

/** Sources by the words that name them; the first that matches is taken. */
const sources: readonly (readonly [label: string, words: RegExp])[] = [
  ['NIST StRD', /StRD|Statistical Reference Datasets/u],
  ['NIST/SEMATECH e-Handbook', /e-Handbook/u],
  ['JCGM 101', /JCGM 101/u],
  ['JCGM 106', /JCGM 106/u],
  ['GUM, JCGM 100', /GUM|JCGM 100/u],
  ['Eurachem QUAM', /QUAM/u],
  ['ILAC-G8', /ILAC-G8/u],
  ['computed with another program', /scipy|another language|40 digits|mf-parser/u],
  ['papers in journals', /Nelson|Grubbs|Rosner|Stephens|Smits|van der Pauw|Pauw/u],
  ['CLP, Regulation (EC) No 1272/2008', /\bCLP\b|1272\/2008/u],
  ['CIAAW atomic weights', /CIAAW/u],
  ['IUPAC', /IUPAC/u],
  ['RFC', /\bRFC \d+/u],
  ['ISO and IEC standards', /\bISO(?:\/\w+)? \d+/u],
  ['MIL-STD-105E', /MIL-STD-105E/u],
  ['ASTM standards', /\bASTM\b|\bE\d\d\b/u],
  ['GB standards', /\bGB(?:\/T)? \d+/u],
  ['FIPS and other published vectors', /FIPS|test vectors?/iu],
  ['Unicode', /Unicode/u]
]

/** Rows that one place in a test file stands for. */
export interface Found {
  readonly place: string
  readonly source: string
  readonly rows: number
  /** One test of its own, not a row of a table or file. */
  readonly isSingle: boolean
  /** The source was recalled without the print at hand. */
  readonly fromMemory: boolean
}

const sourceIn = (text: string) => sources.find(([, words]) => words.test(text))?.[0]

/** Every row from outside in the text of one test file. */
export function rowsIn(path: string, text: string): Found[] {
  const tree = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true)
  const tables = constantTables(tree)
  const found: Found[] = []
  const visit = (node: ts.Node, around: string): void => {
    const call = ts.isExpressionStatement(node) ? outerCall(node.expression) : undefined
    const said = call ? [commentOf(node, text), call.title].filter(Boolean).join('\n') : ''
    const source = sourceIn(said) ?? sourceIn(around)
    if (call?.kind === 'test' && source !== undefined) {
      const line = tree.getLineAndCharacterOfPosition(node.getStart()).line + 1
      const words = sourceIn(said) === undefined ? around : said
      if (/by hand/u.test(words)) return
      found.push({
        place: `${path}:${line}`,
        source,
        rows: call.table ? (lengthOf(call.table, tables) ?? 1) : 1,
        isSingle: call.table === undefined,
        fromMemory: /from memory/u.test(words)
      })
    }
    const below = call?.kind === 'describe' && said !== '' ? said : around
    if (call?.kind !== 'test') ts.forEachChild(node, child => visit(child, below))
  }
  visit(tree, '')
  return found
}

interface TestCall {
  readonly kind: 'test' | 'describe'
  readonly title: string
  readonly table?: ts.Expression
}

/** `test(…)`, `test.for(table)(…)` or `describe(…)`, as written. */
function outerCall(node: ts.Expression): TestCall | undefined {
  if (!ts.isCallExpression(node)) return undefined
  const [first] = node.arguments
  const title = first && ts.isStringLiteralLike(first) ? first.text : (first?.getText() ?? '')
  const called = node.expression
  if (ts.isIdentifier(called) && (called.text === 'test' || called.text === 'describe'))
    return { kind: called.text, title }
  if (!ts.isCallExpression(called) || !ts.isPropertyAccessExpression(called.expression))
    return undefined
  const { expression, name } = called.expression
  const isTable = ['for', 'each'].includes(name.text) && expression.getText() === 'test'
  const [table] = called.arguments
  return isTable && table ? { kind: 'test', title, table } : undefined
}

/** The comment that ends right above a statement. */
const commentOf = (node: ts.Node, text: string): string =>
  (ts.getLeadingCommentRanges(text, node.getFullStart()) ?? [])
    .map(({ pos, end }) => text.slice(pos, end).replace(/\n\s*(?:\/\/|\*)/gu, ''))
    .join(' ')

/** Tables of the file by name. */
function constantTables(tree: ts.SourceFile): ReadonlyMap<string, ts.Expression> {
  const tables = new Map<string, ts.Expression>()
  for (const node of nodesOf(tree))
    if (ts.isVariableDeclaration(node) && node.initializer)
      tables.set(node.name.getText(), node.initializer)
  return tables
}

/** Elements of an array as written; undefined where code makes it. */
function lengthOf(
  node: ts.Expression,
  tables: ReadonlyMap<string, ts.Expression>
): number | undefined {
  if (ts.isArrayLiteralExpression(node)) {
    const spread = node.elements.some(element => ts.isSpreadElement(element))
    return spread ? undefined : node.elements.length
  }
  if (
    ts.isAsExpression(node) ||
    ts.isSatisfiesExpression(node) ||
    ts.isParenthesizedExpression(node)
  )
    return lengthOf(node.expression, tables)
  const file = /rowsOf\('([\w-]+)'\)/u.exec(node.getText())?.[1]
  if (file !== undefined) return 0
  const named = ts.isIdentifier(node) ? tables.get(node.text) : undefined
  return named && named !== node ? lengthOf(named, tables) : undefined
}

/** Rows of a file of rows, by the source its first line names. */
export function rowsOfCsv(path: string, text: string): Found[] {
  const [head = '', , ...rows] = text.trim().split('\n')
  if (!head.startsWith('# source:')) return []
  const source = sourceIn(head) ?? head.replace('# source:', '').trim()
  return [
    {
      place: path,
      source,
      rows: rows.length,
      isSingle: false,
      fromMemory: /from memory/u.test(head)
    }
  ]
}

/** Every row from outside in the whole suite. */
export const outsideRows = (): Found[] =>
  readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
    .map(name => `tests/${name.replaceAll('\\', '/')}`)
    .sort()
    .flatMap(path => {
      const isRows = /\/outside\/[\w-]+\.csv$/u.test(path)
      if (!isRows && !path.endsWith('.test.ts')) return []
      const text = readFileSync(join(root, path), 'utf8')
      return isRows ? rowsOfCsv(path, text) : rowsIn(path, text)
    })

const sum = (found: readonly Found[]) => found.reduce((total, { rows }) => total + rows, 0)

/** Rows of tables and files alone. */
export const tableRows = (found: readonly Found[]): number =>
  sum(found.filter(({ isSingle }) => !isSingle))

/** One line a source, most rows first, and the sum. */
export function sourceTable(found: readonly Found[]): string {
  const cells = (part: readonly Found[]) =>
    [
      tableRows(part),
      sum(part.filter(({ isSingle }) => isSingle)),
      sum(part.filter(({ fromMemory }) => fromMemory))
    ].map(count => String(count).padStart(8))
  const bySource = [...new Set(found.map(({ source }) => source))]
    .map(source => ({ source, part: found.filter(one => one.source === source) }))
    .sort((a, b) => sum(b.part) - sum(a.part))
  return [
    '    rows   tests  memory  source',
    ...bySource.map(({ source, part }) => `${cells(part).join('')}  ${source}`),
    `${cells(found).join('')}  in all`,
    '',
    'rows: of tables and files; tests: single ones; memory: of both, the source recalled from memory',
    ''
  ].join('\n')
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  process.stdout.write(sourceTable(outsideRows()))
