/** Characters that no record holds and no editor shows. */

import { type Problem, problemAt, quoted, type SourceFile } from '../problem.ts'
import { lineStart } from './syntax.ts'

/** Characters YAML forbids; an editor shows most of them as nothing. */
const FORBIDDEN = /[\0-\x08\v\f\x0E-\x1F\x7F-\x84\x86-\x9F\uFFFE\uFFFF]/gu

/** Control characters in a file, one a line: nothing else can be said of it before they are gone. */
export function controlProblems(file: SourceFile): Problem[] {
  const lines = new Set<number>()
  return [...file.text.matchAll(FORBIDDEN)].flatMap(({ 0: character, index }) => {
    const line = lineStart(file.text, index)
    if (lines.has(line)) return []
    lines.add(line)
    const place = { file, field: [], range: [index, index + 1] as const }
    return problemAt(
      place,
      'YAML_SYNTAX',
      `a control character stands here, got ${quoted(character)}`,
      'delete it and type the text anew'
    )
  })
}
