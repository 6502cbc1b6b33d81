/** The project's own source, as the TypeScript compiler reads it. */

import { readdirSync, readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import ts from 'typescript'
import { root } from './root.ts'

export interface Source {
  /** From the top of the checkout, with forward slashes: 'src/quality/judge.ts'. */
  readonly path: string
  readonly text: string
  readonly tree: ts.SourceFile
}

export const parseSource = (path: string, text: string): Source => ({
  path,
  text,
  tree: ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true)
})

/** Every TypeScript file below src. */
export const sources: readonly Source[] = readdirSync(join(root, 'src'), {
  recursive: true,
  encoding: 'utf8'
})
  .map(name => `src/${name.replaceAll('\\', '/')}`)
  .filter(path => path.endsWith('.ts'))
  .sort()
  .map(path => parseSource(path, readFileSync(join(root, path), 'utf8')))

/** Every node of a file, outermost first: in one list, as a generator for each level takes several times as long. */
export function nodesOf(node: ts.Node): readonly ts.Node[] {
  const nodes: ts.Node[] = []
  const visit = (one: ts.Node): void => {
    nodes.push(one)
    ts.forEachChild(one, visit)
  }
  visit(node)
  return nodes
}

/** Arrows and circles ask for the imports of each file. */
const imports = new WeakMap<Source, string[]>()

/**
 * What a file imports, by the text between the quotes: static, type-only, dynamic, re-exported,
 * `import type X = require(…)`, and types written `import('…').X`.
 */
export function importsOf(source: Source): string[] {
  const known = imports.get(source) ?? importsIn(source)
  imports.set(source, known)
  return known
}

const importsIn = ({ tree }: Source): string[] =>
  nodesOf(tree).flatMap(node => {
    const named = importedBy(node)
    return named && ts.isStringLiteralLike(named) ? [named.text] : []
  })

function importedBy(node: ts.Node): ts.Node | undefined {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return node.moduleSpecifier
  if (ts.isExternalModuleReference(node)) return node.expression
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) return node.argument.literal
  const isImport =
    ts.isCallExpression(node) &&
    (node.expression.kind === ts.SyntaxKind.ImportKeyword ||
      node.expression.getText() === 'require')
  return isImport ? node.arguments[0] : undefined
}

/** A relative import as a path from the top of the checkout; undefined for a package. */
export const resolveImport = (from: string, name: string): string | undefined =>
  name.startsWith('.') ? posix.join(posix.dirname(from), name) : undefined
