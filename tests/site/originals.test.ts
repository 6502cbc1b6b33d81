/** Issued papers keep the bytes they were issued in, whatever draws them later. */

import { createHash } from 'node:crypto'
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { IssuedPaper } from '../../src/documents/issued-paper.ts'
import { problemData } from '../../src/problem.ts'
import { buildSite } from '../../src/site/build.ts'
import { archiveFor, asIssued, originalName, otherwiseProblems } from '../../src/site/originals.ts'
import { type Steps, steps } from '../../src/site/steps.ts'
import { done, workshopOf } from './issuing.ts'
import { workplace } from './workplace.ts'

/** By Node's own hashing, not the program's. */
const sha256Of = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

const bytesOf = (text: string) => new Uint8Array(Buffer.from(text))
const [issued, otherwise] = [bytesOf('as issued'), bytesOf('drawn otherwise')]

const paperOf = (number: string, provenBy = 0): IssuedPaper => ({
  number,
  revision: 1,
  text: '{}',
  sha256: 'a'.repeat(64),
  pdfSha256: sha256Of(issued),
  provenBy,
  data: '{}'
})

/** An archive that holds this as CT-1's original. */
function archiveWith(bytes?: Uint8Array): string {
  const folder = join(workplace(), 'archive')
  mkdirSync(folder)
  if (bytes) writeFileSync(join(folder, originalName(paperOf('CT-1'))), bytes)
  return folder
}

test('originals lie beside the content folder, one a revision', () => {
  expect(archiveFor(join('a', 'content'))).toBe(join('a', 'archive'))
  expect(originalName({ number: 'CT-1', revision: 2 })).toBe('CT-1-r2.pdf')
})

describe('served is', () => {
  const served = async (drawn: Uint8Array, archive: string, paper = paperOf('CT-1')) => {
    const { bytes, is } = await asIssued(paper, drawn, archive)
    return [is, Buffer.from(bytes).toString()]
  }

  test('what was drawn, where it comes out as issued', async () => {
    expect(await served(issued, archiveWith(otherwise))).toEqual(['as issued', 'as issued'])
    expect(await served(issued, 'no such folder')).toEqual(['as issued', 'as issued'])
  })

  test('the stored original, where it comes out otherwise', async () => {
    expect(await served(otherwise, archiveWith(issued))).toEqual([
      'the stored original',
      'as issued'
    ])
  })

  test.for([
    ['lacks it', undefined],
    ['holds another file under its name', bytesOf('as issueD')],
    ['holds an empty file', new Uint8Array()]
  ])('what was drawn and told to be redrawn, where the archive %s', async ([, stored]) => {
    const archive = archiveWith(stored as Uint8Array | undefined)
    expect(await served(otherwise, archive)).toEqual(['redrawn', 'drawn otherwise'])
  })

  test('what was drawn, of a paper the register has no PDF of', async () => {
    const { pdfSha256: _, ...paper } = paperOf('CT-1')
    expect(await served(otherwise, archiveWith(issued), paper)).toEqual([
      'as issued',
      'drawn otherwise'
    ])
  })

  test('nothing where the archive cannot be read: that is no missing file', async () => {
    const archive = archiveWith()
    mkdirSync(join(archive, 'CT-1-r1.pdf'))
    await expect(served(otherwise, archive)).rejects.toThrow(/EISDIR/u)
  })
})

describe('told is', () => {
  const log = { path: 'register/log.jsonl', text: 'one\ntwo\nthree\n' }

  test('each kind once, at the line of its first paper, the graver first', () => {
    const found = otherwiseProblems(log, [
      { paper: paperOf('CT-1', 0), is: 'the stored original' },
      { paper: paperOf('CT-2', 1), is: 'redrawn' },
      { paper: paperOf('CT-3', 2), is: 'redrawn' }
    ])
    expect(found.map(problem => [problemData(problem).line, problem.code])).toEqual([
      [2, 'PAPER_REDRAWN'],
      [1, 'PAPER_FROM_ARCHIVE']
    ])
    expect(found[0]!.message).toMatch(/archive: CT-2-r1\.pdf, CT-3-r1\.pdf$/u)
    expect(found[1]!.message).toMatch(/original: CT-1-r1\.pdf$/u)
  })

  test('nothing of none, and five by name of seven', () => {
    expect(otherwiseProblems(log, [])).toEqual([])
    const seven = [1, 2, 3, 4, 5, 6, 7].map(n => ({
      paper: paperOf(`CT-${n}`),
      is: 'redrawn' as const
    }))
    expect(otherwiseProblems(log, seven)[0]!.message).toMatch(/CT-5-r1\.pdf and 2 more$/u)
  })
})

describe('a site built after its certificate was issued', () => {
  const invented = () => Buffer.from('%PDF-2.0')

  /** The program as it is, but for papers that are not issued; and as if a later one drew otherwise. */
  const now: Steps = { ...steps, datasheetPdf: invented, statementPdf: invented }
  const later: Steps = {
    ...now,
    certificatePdf: async (...given) =>
      Buffer.concat([await steps.certificatePdf(...given), Buffer.from('%later\n')]),
    renderer: () => Promise.resolve('later')
  }

  async function built(place: string, by: Steps) {
    const content = join(place, 'content')
    const out = join(place, '_site')
    const { problems } = await buildSite({ content, out, edition: 'public' }, by)
    return {
      codes: problems.map(({ code }) => code),
      pdf: sha256Of(readFileSync(join(out, 'certificates', 'CT-1', 'CT-1-r1.pdf')))
    }
  }

  test('gives the bytes as issued; the original of a later program; redrawn ones without it', async () => {
    const place = workshopOf()
    await done(place, 'issue', 'EB-1', '--date', '2026-03-01')
    const original = join(place, 'archive', 'CT-1-r1.pdf')
    const bytes = readFileSync(original)
    const pdf = sha256Of(bytes)

    expect(await built(place, now)).toEqual({ codes: [], pdf })
    expect(await built(place, later)).toEqual({ codes: ['PAPER_FROM_ARCHIVE'], pdf })

    writeFileSync(original, Buffer.concat([bytes, Buffer.from('\n')]))
    const tampered = await built(place, later)
    expect(tampered.codes).toEqual(['PAPER_REDRAWN'])
    expect([pdf, sha256Of(readFileSync(original))]).not.toContain(tampered.pdf)

    rmSync(original)
    expect(await built(place, later)).toEqual(tampered)
    expect(await built(place, now)).toEqual({ codes: [], pdf })
  })
})
