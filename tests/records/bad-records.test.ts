/**
 * Records with something wrong in them: each file names at its head every problem it gives.
 *
 *     # replaces: batches/EB-1.yaml            or joins: a path the workshop does not have
 *     # expect: 11:43 COMMA_DECIMAL            or expect: other/file.yaml 11:43 CODE, or nothing
 *     #   says: a part of the message, field included
 *     #   hint: a part of the hint
 */

import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { judgeContent, withSignals } from '../../src/pipeline.ts'
import { fieldText, type Problem, problemCodes, problemData } from '../../src/problem.ts'
import { badRecords, base, withFile } from './workshop.ts'

interface Expected {
  /** 'batches/EB-1.yaml 11:43 COMMA_DECIMAL' */
  readonly at: string
  readonly says: string
  readonly hint: string
}

interface BadRecord {
  readonly name: string
  readonly path: string
  readonly mode: 'replaces' | 'joins'
  readonly text: string
  readonly expected: readonly Expected[]
}

function headerOf({ path: name, text }: { path: string; text: string }): BadRecord {
  const lines = text.replace(/^\uFEFF/u, '').split(/\r?\n/u)
  const header = lines.slice(
    0,
    lines.findIndex(line => !line.startsWith('#'))
  )
  const [, mode, path] = /^# (replaces|joins): (\S+)$/u.exec(header[1] ?? '') ?? []
  if ((mode !== 'replaces' && mode !== 'joins') || !path) throw new Error(`${name}: no path`)
  const expected = header.flatMap((line, index): Expected[] => {
    const at = /^# expect: (?:(\S+) )?(\d+:\d+ [A-Z_]+)$/u.exec(line)
    if (!at) return []
    const [says, hint] = ['says', 'hint'].map((key, offset) => {
      const part = new RegExp(`^# {3}${key}: (.+)$`, 'u').exec(header[index + offset + 1] ?? '')
      if (!part?.[1]) throw new Error(`${name}: an expected problem without '${key}:'`)
      return part[1]
    })
    return [{ at: `${at[1] ?? path} ${at[2]}`, says: says!, hint: hint! }]
  })
  if (expected.length === 0 && !header.includes('# expect: nothing'))
    throw new Error(`${name}: nothing is expected of it`)
  return { name, path, mode, text, expected }
}

const records = badRecords.map(headerOf)

const atOf = (problem: Problem) => {
  const { file, line, column, code } = problemData(problem)
  return `${file} ${line}:${column} ${code}`
}

const sentenceOf = ({ field, message }: Problem) =>
  field.length > 0 ? `${fieldText(field)}: ${message}` : message

test('the workshop itself gives no problem', () => {
  expect(judgeContent(base).problems).toEqual([])
})

test('there are at least 65 of them, and each says truly whether it replaces or joins', () => {
  expect(records.length).toBeGreaterThanOrEqual(65)
  for (const { name, mode, path } of records)
    expect([name, base.some(file => file.path === path)]).toEqual([name, mode === 'replaces'])
})

describe('each gives the problems it names, all of them and no other', () => {
  test.for(records)('$name', ({ path, text, expected }) => {
    const problems = withSignals(judgeContent(withFile(path, text)))
    expect(problems.map(atOf)).toEqual(expected.map(({ at }) => at))
    for (const [index, problem] of problems.entries()) {
      expect(sentenceOf(problem)).toContain(expected[index]!.says)
      expect(problem.hint).toContain(expected[index]!.hint)
    }
  })
})

/** Codes no single file can give, and the test that gives them. */
const elsewhere: Partial<Record<string, string>> = {
  OVER_RETURNED: 'tests/evaluate/complaints.test.ts',
  MISSING_RECORD: 'tests/records/content.test.ts',
  OXIDISER_LEFT: 'tests/evaluate/oxidiser.test.ts',
  CHARGE_LIMIT: 'tests/evaluate/process-doubts.test.ts',
  STEP_ORDER: 'tests/evaluate/process-doubts.test.ts',
  INCOMPATIBLE: 'tests/evaluate/process-doubts.test.ts',
  HOTTER_THAN_DILUTION: 'tests/evaluate/process-doubts.test.ts',
  UNLIKE_PANELS: 'tests/evaluate/panels.test.ts',
  UNSAID_STRENGTH: 'tests/evaluate/liquor.test.ts',
  SHEET_OWED: 'tests/judge/shipments.test.ts',
  PROCESS_SIGNAL: 'tests/judge/watch.test.ts',
  NOT_A_TABLE: 'tests/intake/take-over.test.ts',
  MISSING_COLUMN: 'tests/intake/take-over.test.ts',
  UNMAPPED_COLUMN: 'tests/intake/take-over.test.ts',
  AMBIGUOUS_NUMBER: 'tests/intake/take-over.test.ts',
  COMPUTED_VALUE: 'tests/intake/take-over.test.ts',
  ALREADY_RECORDED: 'tests/intake/take-over.test.ts',
  NOT_LABELLABLE: 'tests/cli/label.test.ts',
  CERTIFICATE_FORMAT: 'tests/documents/frozen.test.ts',
  CERTIFICATE_DIFFERS: 'tests/documents/drift.test.ts',
  CERTIFICATE_STANDS: 'tests/documents/drift.test.ts',
  REWORDED: 'tests/documents/rewordings.test.ts',
  PICTURE_MISSING: 'tests/documents/pictures.test.ts',
  PICTURE_UNUSABLE: 'tests/documents/pictures.test.ts',
  COPY_DIFFERS: 'tests/cli/ship.test.ts',
  COPY_SUPERSEDED: 'tests/cli/ship.test.ts',
  PAPER_REDRAWN: 'tests/site/originals.test.ts',
  PAPER_FROM_ARCHIVE: 'tests/site/originals.test.ts'
}

/** The register's codes are no record's; `tests/register/codes.test.ts` asks the same of them. */
const recordCodes = Object.keys(problemCodes).filter(code => !code.startsWith('REGISTER_'))

test.for(recordCodes)('%s is given by one of them, or by a test named here', code => {
  const given = records.some(({ expected }) => expected.some(({ at }) => at.endsWith(` ${code}`)))
  const named = elsewhere[code]
  const tested = named === undefined ? '' : readFileSync(named, 'utf8')
  expect(given || new RegExp(`\\b${code}\\b`, 'u').test(tested)).toBe(true)
})

test.for(records)(
  '$name: sentences without capital, full stop or machine words',
  ({ path, text }) => {
    for (const { message, hint } of judgeContent(withFile(path, text)).problems)
      for (const sentence of [message, hint]) {
        expect(sentence).not.toMatch(/^\p{Lu}\p{Ll}|\.$/u)
        expect(sentence).not.toMatch(/undefined|NaN|Infinity|\[object/u)
      }
  }
)
