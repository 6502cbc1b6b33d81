/**
 * Each command as a program of its own, and called in place as most tests do: both come to the same
 * exit code, the same words and the same files.
 */

import { cpSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { builtSmallWorkplace } from '../site/built-small.ts'
import { lotfolio, lotfolioProcess, tree } from '../site/workplace.ts'
import { thorough } from '../thorough.ts'

const setup = ['setup', 'w', '--name', 'N', '--address', 'A', '--email', 'a@example.org']
const answered = [...setup, '--telephone', '555 0100', '--person', 'P', '--date', '2026-01-02']

type Row = readonly [args: readonly string[], status: number]

/** Each command, most on the shortest of its ways: starting a program takes longer than what it does. */
const rows: readonly Row[] = [
  [['check', '--content', 'broken'], 1],
  // As of another day, for which datasheets and pages are made anew; other papers have rows below.
  [['build', '--edition', 'workshop', '--as-of', '2026-12-31'], 0],
  // Worms have none; a certificate is drawn for 'issue'.
  [['papers', 'XR-1'], 1],
  [['label', 'FL-1', '--container', 'carton', '--capacity', '2L', '--holds', '30g'], 0],
  [['new', 'batch', '--date', '2026-12-01'], 0],
  [['import', 'content/producer.yaml', '--lot', 'EB-1', '--test', 'sieve'], 1],
  [['move-in', 'content/producer.yaml', '--mapping', 'none'], 1],
  [answered, 0],
  [['schemas', '--out', 'schemas'], 0],
  [['issue', 'EB-1', '--date', '2026-03-01'], 0],
  [['withdraw', 'CT-1', '--reason', 'x'], 1],
  [['keys'], 0],
  [['sign'], 1],
  [['verify', 'content/producer.yaml'], 1],
  [['join', 'content'], 0],
  [['ship', 'SH-1'], 1],
  [['trace', 'EB-1'], 0],
  [['plan', '--grade', 'FK-1', '--graphite', '1g'], 1],
  [['sheet', 'EB-1'], 0],
  [['explain', 'EB-1', 'expansion-volume'], 0],
  [[], 2]
]

/** The same commands on another way, and every paper of a site. */
const furtherRows: readonly Row[] = [
  [['check'], 0],
  [['papers', 'EB-1'], 0],
  [['build', '--edition', 'workshop', '--paper', 'Letter'], 0],
  [['build', '--content', 'broken'], 1],
  [setup, 2],
  [['keys', '--make', '--retire', 'x'], 2]
]

/** A workplace with a site and its papers, and a folder of broken records beside the sound ones. */
async function placeOf(): Promise<string> {
  const place = await builtSmallWorkplace()
  cpSync(join(place, 'content'), join(place, 'broken'), { recursive: true })
  writeFileSync(join(place, 'broken', 'producer.yaml'), 'name: [')
  return place
}

/** What a command comes to: exit code, words, and every file there is then. */
async function outcome(run: typeof lotfolio, args: readonly string[]) {
  const place = await placeOf()
  const { status, stdout, stderr } = await run(args, place)
  const words = [stdout, stderr].map(text => text.replaceAll(place, '<place>'))
  return { status, words, files: tree(place) }
}

describe('in a process of its own and in place', () => {
  test.each([...rows, ...(thorough ? furtherRows : [])])(
    '%j comes to the same, with exit code %i',
    async (args, status) => {
      const alone = await outcome(lotfolioProcess, args)
      expect(alone.status).toBe(status)
      expect(alone.words.join('')).not.toBe('')
      expect(await outcome(lotfolio, args)).toEqual(alone)
    }
  )
})
