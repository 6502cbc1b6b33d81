/** Who may import whom, and what may not be asked for at all. */

import ts from 'typescript'
import { describe, expect, test } from 'vitest'
import {
  importsOf,
  nodesOf,
  parseSource,
  resolveImport,
  type Source,
  sources
} from './source-files.ts'

/**
 * The arrows: each part of src with the parts it may import from. A part is a folder of src, or a
 * file at its top.
 */
const arrows: Readonly<Record<string, readonly string[]>> = {
  'problem.ts': [],
  'markup.ts': [],
  'gaps.ts': [],
  metrology: [],
  figures: [],
  register: ['problem.ts', 'gaps.ts'],
  verify: ['register'],
  x509: [],
  archive: ['metrology', 'gaps.ts'],
  browser: ['register', 'verify', 'archive'],
  hazards: ['metrology'],
  quantities: ['metrology'],
  'quantities.ts': ['metrology', 'quantities'],
  chemistry: ['metrology'],
  physics: ['metrology'],
  quality: ['metrology'],
  records: ['problem.ts', 'metrology', 'quantities.ts'],
  evaluate: ['problem.ts', 'metrology', 'quantities.ts', 'records', 'chemistry', 'physics'],
  judge: ['problem.ts', 'metrology', 'quantities.ts', 'records', 'evaluate', 'quality', 'hazards'],
  trace: ['problem.ts', 'records', 'evaluate', 'quality'],
  plan: [
    'problem.ts',
    'metrology',
    'records',
    'evaluate',
    'chemistry',
    'judge',
    'hazards',
    'trace'
  ],
  documents: [
    'plan',
    'problem.ts',
    'metrology',
    'quantities.ts',
    'records',
    'chemistry',
    'physics',
    'quality',
    'evaluate',
    'judge',
    'trace',
    'hazards',
    'figures',
    'register',
    'archive'
  ],
  html: ['markup.ts', 'documents', 'figures', 'archive'],
  pdf: ['documents', 'figures'],
  data: ['markup.ts', 'documents', 'figures', 'archive'],
  'pipeline.ts': [
    'problem.ts',
    'metrology',
    'quantities.ts',
    'records',
    'chemistry',
    'physics',
    'quality',
    'evaluate',
    'judge',
    'documents',
    'register'
  ],
  tables: ['problem.ts'],
  intake: ['problem.ts', 'metrology', 'quantities.ts', 'records', 'tables'],
  forms: ['markup.ts', 'problem.ts', 'records'],
  site: ['pipeline.ts', 'problem.ts', 'documents', 'html', 'pdf', 'data', 'register', 'verify'],
  cli: [
    'pipeline.ts',
    'problem.ts',
    'site',
    'html',
    'pdf',
    'data',
    'records',
    'documents',
    'plan',
    'register',
    'verify',
    'tables',
    'intake',
    'forms',
    'x509'
  ]
}

/** Packages a part may use; a part not listed uses none. Node's own modules stand as 'node:'. */
const packages: Readonly<Record<string, readonly string[]>> = {
  metrology: ['decimal.js', '@stdlib/stats-base-dists-t-quantile'],
  quality: [
    'decimal.js',
    '@stdlib/stats-base-dists-beta-cdf',
    '@stdlib/stats-base-dists-chisquare-cdf',
    '@stdlib/stats-base-dists-chisquare-quantile',
    '@stdlib/stats-base-dists-f-cdf',
    '@stdlib/stats-base-dists-normal-cdf',
    '@stdlib/stats-base-dists-normal-quantile',
    '@stdlib/stats-base-dists-t-quantile'
  ],
  records: ['yaml', 'zod', 'fastest-levenshtein'],
  judge: ['decimal.js'],
  trace: ['decimal.js'],
  documents: ['decimal.js', 'zod'],
  figures: ['uqr', 'd3-scale', 'd3-shape'],
  register: ['zod', 'canonicalize'],
  archive: ['@leeoniya/ufuzzy'],
  data: ['csv-stringify'],
  pdf: ['pdfkit', 'fontkit', 'node:'],
  site: ['@11ty/eleventy', 'esbuild', 'node:'],
  tables: ['csv-parse', 'fast-xml-parser', 'fflate'],
  intake: ['decimal.js'],
  x509: ['pkijs', 'asn1js', 'node:'],
  cli: ['commander', 'diff', 'node:']
}

/** Commands of the program: none knows another. */
const commands = [
  'build',
  'check',
  'explain',
  'import',
  'issue',
  'keys',
  'label',
  'move-in',
  'new',
  'papers',
  'plan',
  'schemas',
  'setup',
  'ship',
  'sheet',
  'sign',
  'start',
  'trace',
  'verify',
  'withdraw'
].map(name => `src/cli/${name}.ts`)

/** 'src/quality/judge.ts' → 'quality'; 'src/problem.ts' → 'problem.ts'. */
const partOf = (path: string) => path.split('/')[1]!

const packageOf = (name: string) =>
  name.startsWith('node:')
    ? 'node:'
    : name
        .split('/')
        .slice(0, name.startsWith('@') ? 2 : 1)
        .join('/')

/** Every import of a file that its part may not make. */
function strayImports(source: Source): string[] {
  const part = partOf(source.path)
  return importsOf(source).flatMap(name => {
    const target = resolveImport(source.path, name)
    const allowed =
      target === undefined
        ? (packages[part] ?? []).includes(packageOf(name))
        : target.startsWith('src/') &&
          (partOf(target) === part || (arrows[part] ?? []).includes(partOf(target))) &&
          !(commands.includes(source.path) && commands.includes(target))
    return allowed ? [] : [`${source.path} imports ${name}`]
  })
}

/** Groups of files that import each other in a circle: Tarjan's strongly connected components. */
function cyclesOf(edges: ReadonlyMap<string, readonly string[]>): string[][] {
  const order = new Map<string, number>()
  const lowest = new Map<string, number>()
  const open: string[] = []
  const cycles: string[][] = []
  const visit = (file: string): number => {
    const index = order.size
    order.set(file, index)
    lowest.set(file, index)
    open.push(file)
    for (const next of edges.get(file) ?? [])
      if (!order.has(next)) lowest.set(file, Math.min(lowest.get(file)!, visit(next)))
      else if (open.includes(next)) lowest.set(file, Math.min(lowest.get(file)!, order.get(next)!))
    if (lowest.get(file) === index) {
      const group = open.splice(open.indexOf(file))
      if (group.length > 1 || edges.get(file)?.includes(file)) cycles.push(group.sort())
    }
    return lowest.get(file)!
  }
  for (const file of edges.keys()) if (!order.has(file)) visit(file)
  return cycles
}

const edgesOf = (files: readonly Source[]) =>
  new Map(
    files.map(source => [
      source.path,
      importsOf(source).flatMap(name => resolveImport(source.path, name) ?? [])
    ])
  )

/** What makes a run depend on more than its input. */
const impure = new Set([
  'Date.now',
  'Math.random',
  'performance.now',
  'process.env',
  'process.hrtime'
])

/** Places where a file asks for the time, for chance or for its surroundings. */
const impurities = ({ path, tree }: Source): string[] =>
  nodesOf(tree).flatMap(node => {
    const bareDate =
      (ts.isNewExpression(node) || ts.isCallExpression(node)) &&
      node.expression.getText() === 'Date' &&
      (ts.isCallExpression(node) || (node.arguments ?? []).length === 0)
    const read = ts.isPropertyAccessExpression(node) || ts.isElementAccessExpression(node)
    const name = read
      ? node
          .getText()
          .replace(/\?\.|\[['"`]|['"`]\]/gu, '.')
          .replace(/\.$/u, '')
      : ''
    const asked = name.replace(/^globalThis\./u, '')
    return bareDate || impure.has(asked) ? [`${path}: ${node.getText()}`] : []
  })

describe('imports', () => {
  test('every part of src stands in the table', () => {
    const parts = new Set(sources.map(({ path }) => partOf(path)))
    expect([...parts].filter(part => !(part in arrows))).toEqual([])
  })

  test('every import follows an arrow and names an allowed package', () => {
    expect(sources.flatMap(strayImports)).toEqual([])
  })

  test('every relative import names a file, so that none escapes the table', () => {
    const known = new Set(sources.map(({ path }) => path))
    const missing = [...edgesOf(sources)].flatMap(([path, targets]) =>
      targets
        .filter(target => !known.has(target) && !target.endsWith('.json'))
        .map(target => `${path} → ${target}`)
    )
    expect(missing).toEqual([])
  })

  test('the arrows themselves run one way', () => {
    expect(cyclesOf(new Map(Object.entries(arrows)))).toEqual([])
  })

  test('no file imports itself, not even by way of others', () => {
    expect(cyclesOf(edgesOf(sources))).toEqual([])
  })

  test('no folder of src knows the tests', () => {
    expect(sources.filter(({ text }) => /from '.*tests\//u.test(text))).toEqual([])
  })
})

describe('the reading of imports', () => {
  test.for([
    ["import { a } from '../cli/main.ts'"],
    ['import { a } from "../cli/main.ts"'],
    ["import type { A } from '../cli/main.ts'"],
    ["import { type A } from '../cli/main.ts'"],
    ["import '../cli/main.ts'"],
    ["import * as a from '../cli/main.ts'"],
    ["import a from '../cli/main.ts' with { type: 'json' }"],
    ["export * from '../cli/main.ts'"],
    ["export { a } from '../cli/main.ts'"],
    ["const a = await import('../cli/main.ts')"],
    ['const a = await import(`../cli/main.ts`)'],
    ["const a = () => import('../cli/main.ts', { with: { type: 'json' } })"],
    ["type A = import('../cli/main.ts').A"],
    ["const a = require('../cli/main.ts')"]
  ] as const)('finds %s', ([text]) => {
    expect(strayImports(parseSource('src/quality/judge.ts', text))).toHaveLength(1)
  })

  test('a package of another part is refused', () => {
    const source = parseSource('src/evaluate/flake.ts', "import { parse } from 'yaml'")
    expect(strayImports(source)).toEqual(['src/evaluate/flake.ts imports yaml'])
  })

  test("Node's modules stay in pdf, site and cli", () => {
    const text = "import { readFileSync } from 'node:fs'"
    expect(strayImports(parseSource('src/documents/lot.ts', text))).toHaveLength(1)
    expect(strayImports(parseSource('src/site/build.ts', text))).toEqual([])
  })

  test('a command may not import another', () => {
    const source = parseSource('src/cli/build.ts', "import { start } from './start.ts'")
    expect(strayImports(source)).toHaveLength(1)
  })

  test('a circle of two and a file importing itself are found', () => {
    const edges = { a: ['b'], b: ['c'], c: ['b', 'd'], d: [], e: ['e'] }
    expect(cyclesOf(new Map(Object.entries(edges)))).toEqual([['b', 'c'], ['e']])
  })
})

describe('the same input makes the same output', () => {
  test('no clock, chance or surroundings outside the commands', () => {
    const pure = sources.filter(({ path }) => partOf(path) !== 'cli')
    expect(pure.flatMap(impurities)).toEqual([])
  })

  test.for([
    ['new Date()'],
    ['new Date'],
    ['Date()'],
    ['Date.now()'],
    ['Math.random()'],
    ["Math['random']()"],
    ['performance.now()'],
    ['process.env.HOME'],
    ["process['env']"],
    ['globalThis.Date.now()']
  ] as const)('%s would be found', ([text]) => {
    expect(impurities(parseSource('src/quality/judge.ts', text))).not.toEqual([])
  })

  test('a date from a text is none of it', () => {
    expect(impurities(parseSource('src/pdf/a.ts', "new Date('2026-01-01')"))).toEqual([])
  })
})
