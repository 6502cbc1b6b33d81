import { beforeAll, describe, expect, test } from 'vitest'
import {
  compareDocuments,
  compareEarlier,
  compareHead,
  documentName
} from '../../src/register/compare.ts'
import { fingerprint } from '../../src/register/fingerprint.ts'
import { headOf, readLog, treeOf } from '../../src/register/log.ts'
import { linesOf, makeSample, type Sample, textOfLines } from './sample.ts'

let sample: Sample
let lines: string[]
let found: Map<string, string>
beforeAll(async () => {
  sample = await makeSample()
  lines = linesOf(sample.text)
  const { one, oneAmended, two, three } = sample.documents
  const named = {
    'CT-1-r1.json': one,
    'CT-1-r2.json': oneAmended,
    'CT-2-r1.json': two,
    'CT-3-r1.json': three
  }
  found = new Map(
    await Promise.all(
      Object.entries(named).map(async ([name, text]) => [name, await fingerprint(text)] as const)
    )
  )
})

const told = (faults: readonly { line: number; code: string }[]) =>
  faults.map(({ line, code }) => `${line} ${code}`)

describe('documents', () => {
  test('agree', () => {
    expect(documentName({ number: 'CT-1', revision: 2 })).toBe('CT-1-r2.json')
    expect(compareDocuments(sample.log, found)).toEqual([])
  })

  test('a document without its line: what a shortened log leaves', async () => {
    const short = await readLog(textOfLines(lines.slice(0, 5)))
    expect(compareDocuments(short, found)).toEqual([
      {
        line: 0,
        code: 'REGISTER_NO_LINE',
        sentence: 'CT-2-r1.json is in no line: its line was dropped, or it was never issued'
      },
      {
        line: 0,
        code: 'REGISTER_NO_LINE',
        sentence: 'CT-3-r1.json is in no line: its line was dropped, or it was never issued'
      }
    ])
  })

  test('a line without its document, and one with another', () => {
    const changed = new Map(found)
    changed.delete('CT-1-r1.json')
    changed.set('CT-3-r1.json', found.get('CT-2-r1.json')!)
    expect(compareDocuments(sample.log, changed)).toEqual([
      { line: 2, code: 'REGISTER_NO_DOCUMENT', sentence: 'CT-1-r1.json is not there' },
      {
        line: 8,
        code: 'REGISTER_DOCUMENT_CHANGED',
        sentence: 'CT-3-r1.json is not the document that was issued: its bytes were changed'
      }
    ])
  })

  test('a name that only JavaScript knows is no document', () => {
    expect(told(compareDocuments(sample.log, new Map([...found, ['constructor', 'x']])))).toEqual([
      '0 REGISTER_NO_LINE'
    ])
  })
})

describe('an earlier log', () => {
  test('every beginning of it agrees', async () => {
    const tree = await treeOf(sample.log)
    for (let size = 0; size <= lines.length; size++) {
      const earlier = textOfLines(lines.slice(0, size))
      expect(compareEarlier(sample.text, earlier)).toEqual([])
      const head = await headOf(await treeOf(await readLog(earlier)))
      expect(await compareHead(tree, head)).toEqual([])
    }
  })

  test('a shorter log than it was', async () => {
    for (let size = 0; size < lines.length; size++) {
      const short = textOfLines(lines.slice(0, size))
      expect(told(compareEarlier(short, sample.text))).toEqual([`${size} REGISTER_SHORTENED`])
      const tree = await treeOf(await readLog(short))
      const head = await headOf(await treeOf(sample.log))
      expect(told(await compareHead(tree, head))).toEqual([`${size} REGISTER_SHORTENED`])
    }
  })

  test('a line that was replaced', async () => {
    const head = await headOf(await treeOf(sample.log))
    for (const [index, line] of lines.entries()) {
      const other = lines.with(index, line.replace('2026', '2025'))
      expect(told(compareEarlier(textOfLines(other), sample.text))).toEqual([
        `${index + 1} REGISTER_REWRITTEN`
      ])
      const tree = await treeOf({ lines: other })
      expect(told(await compareHead(tree, head))).toEqual(['10 REGISTER_REWRITTEN'])
    }
  })
})
