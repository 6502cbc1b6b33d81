/** Pictures that records name: what is told of those that cannot be shown, and who sees the others. */

import { describe, expect, test } from 'vitest'
import type { PictureHead } from '../../src/documents/picture-types.ts'
import { buildDocuments } from '../../src/pipeline.ts'
import { readPictures } from '../../src/site/read-pictures.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'
import { demoRegister } from './demo-register.ts'

const pictures = await readPictures('content')
const name = 'EB-26-015-worms.jpg'

function siteWith(files = demoFiles, edition: 'public' | 'workshop' = 'public') {
  const { site } = buildDocuments(files, { edition, register: demoRegister, pictures })
  return (lot: string) => {
    const index = site!.summaries.findIndex(summary => summary.lot === lot)
    return site!.lots[index]!.pictures
  }
}

const problemsWith = (changes: readonly (readonly [string, PictureHead | undefined])[]) => {
  const changed = new Map(pictures)
  for (const [file, head] of changes)
    if (head) changed.set(file, head)
    else changed.delete(file)
  return buildDocuments(demoFiles, {
    edition: 'public',
    register: demoRegister,
    pictures: changed
  }).problems.filter(({ code }) => code.startsWith('PICTURE'))
}

test('the page has each with its caption, its size and a scale of a round length', () => {
  expect(siteWith()('EB-26-015')).toEqual([
    {
      file: name,
      url: 'lots/EB-26-015/picture-1.jpg',
      caption: expect.stringMatching(/^Worms of the lot/u) as string,
      width_px: 960,
      height_px: 640,
      scale: {
        text: expect.stringMatching(/^2\smm$/u) as string,
        drawing: expect.anything() as object
      }
    }
  ])
})

test('customers see them only where the grade opens them', () => {
  const closed = withChange(
    demoFiles,
    'grades/flake-250-r3.yaml',
    'public: [results, working, chain, sampling, panels, pictures]',
    'public: [results, working, chain, sampling, panels]'
  )
  expect(siteWith(closed)('EB-26-015')).toBeUndefined()
  expect(siteWith(closed, 'workshop')('EB-26-015')).toHaveLength(1)
})

describe('told at the record’s line', () => {
  test('that a picture is not there, with the nearest that is', () => {
    const [problem, ...others] = problemsWith([
      [name, undefined],
      ['EB-26-015-worm.jpg', pictures.get(name)]
    ])
    expect(others).toEqual([])
    expect(problem).toMatchObject({
      code: 'PICTURE_MISSING',
      field: ['pictures', 0, 'file'],
      hint: 'did you mean EB-26-015-worm.jpg?'
    })
    expect(problem!.file.path).toBe('content/batches/EB-26-015.yaml')
  })

  test('why a picture cannot be shown', () => {
    const [damaged] = problemsWith([[name, { fault: 'is cut short or damaged' }]])
    expect(damaged).toMatchObject({
      code: 'PICTURE_UNUSABLE',
      message: 'the picture is cut short or damaged'
    })
    const large = { kind: 'jpg' as const, width_px: 9000, height_px: 6000, size_bytes: 7_400_000 }
    expect(problemsWith([[name, large]])[0]!.message).toMatch(/takes 7\.4 MB/u)
  })

  test('nothing where it is not known what pictures there are', () => {
    const { problems } = buildDocuments(demoFiles, { edition: 'public', register: demoRegister })
    expect(problems.filter(({ code }) => code.startsWith('PICTURE'))).toEqual([])
  })
})
