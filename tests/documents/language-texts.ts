/** What the words of languages say, for tests that look for words of one in texts of another. */

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import ts from 'typescript'
import { root } from '../root.ts'
import { nodesOf, parseSource } from '../source-files.ts'

/** Words of letters alone, in lower case. */
export const wordsIn = (text: string): string[] =>
  (text.normalize('NFC').match(/\p{L}{2,}/gu) ?? []).map(word => word.toLowerCase())

/** Files of a language, its folder's own and those below. */
const filesOf = (language: string): string[] =>
  readdirSync(join(root, 'src/documents/languages', language), {
    recursive: true,
    encoding: 'utf8'
  }).filter(name => name.endsWith('.ts'))

/** What the words of a language say: every text in its files that is no name in code. */
export const textsOf = (language: string): string[] =>
  filesOf(language).flatMap(name => {
    const path = join(root, 'src/documents/languages', language, name)
    return nodesOf(parseSource(path, readFileSync(path, 'utf8')).tree).flatMap(node => {
      if (
        !ts.isStringLiteralLike(node) &&
        !ts.isTemplateHead(node) &&
        !ts.isTemplateMiddleOrTemplateTail(node)
      )
        return []
      const { parent } = node
      const isName =
        ts.isImportDeclaration(parent) ||
        ts.isLiteralTypeNode(parent) ||
        (ts.isPropertyAssignment(parent) && parent.name === node)
      return isName ? [] : [node.text]
    })
  })
