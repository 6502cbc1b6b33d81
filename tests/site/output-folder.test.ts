import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { buildSite } from '../../src/site/build.ts'
import { Failure } from '../../src/site/failure.ts'
import type { Edition } from '../../src/site/marker.ts'
import { siteDocument } from '../fixtures/documents.ts'
import { inventedSteps, namesIn, tree, workplace } from './workplace.ts'

function placeOf(): string {
  const place = workplace()
  mkdirSync(join(place, 'work', 'content'), { recursive: true })
  writeFileSync(join(place, 'work', 'content', 'a.yaml'), 'a: 1\n')
  mkdirSync(join(place, 'work', 'src'))
  writeFileSync(join(place, 'work', 'src', 'mine.txt'), 'mine')
  writeFileSync(join(place, 'work', 'file'), 'mine')
  return place
}

const build = (place: string, out: string, edition: Edition = 'public') =>
  buildSite(
    { content: join(place, 'work', 'content'), out: join(place, out), edition },
    inventedSteps({
      buildDocuments: () => ({ site: { ...siteDocument, edition }, problems: [] })
    })
  )

describe('refuses, and touches nothing,', () => {
  const rows: [what: string, out: string, edition: Edition, because: RegExp][] = [
    ['the content folder', 'work/content', 'public', /must lie outside/u],
    ['a folder in it', 'work/content/site', 'public', /must lie outside/u],
    ['the folder around it', 'work', 'public', /must lie outside/u],
    ['a folder further up', '.', 'public', /must lie outside/u],
    ['a folder with files of others', 'work/src', 'public', /is not empty and holds no site/u],
    ['a file', 'work/file', 'public', /is a file, not a folder/u],
    ['the public edition in private', 'work/private', 'public', /never written into private/u],
    ['the workshop edition in _site', 'work/_site', 'workshop', /never written into _site/u]
  ]
  test.each(rows)('%s', async (_, out, edition, because) => {
    const place = placeOf()
    const before = tree(place)
    const result = build(place, out, edition)
    await expect(result).rejects.toThrow(because)
    await expect(result).rejects.toBeInstanceOf(Failure)
    expect(tree(place)).toEqual(before)
  })

  test('a folder inside a site, of either edition', async () => {
    const place = placeOf()
    await build(place, 'pages')
    await expect(build(place, 'pages/inner', 'workshop')).rejects.toThrow(/inside the site/u)
    await expect(build(place, 'pages/lots/inner')).rejects.toThrow(/inside the site/u)
  })

  test('the folder of the other edition', async () => {
    const place = placeOf()
    await build(place, 'pages')
    const before = tree(join(place, 'pages'))
    await expect(build(place, 'pages', 'workshop')).rejects.toThrow(/holds the public edition/u)
    expect(tree(join(place, 'pages'))).toEqual(before)
  })

  test('a link to the content folder', async () => {
    const place = placeOf()
    symlinkSync(join(place, 'work', 'content'), join(place, 'link'))
    await expect(build(place, 'link')).rejects.toThrow(/must lie outside/u)
    await expect(build(place, 'link/inner')).rejects.toThrow(/must lie outside/u)
  })

  test('a site somebody keeps a Git repository in', async () => {
    const place = placeOf()
    await build(place, 'pages')
    mkdirSync(join(place, 'pages', '.git'))
    await expect(build(place, 'pages')).rejects.toThrow(/Git repository/u)
  })
})

describe('takes', () => {
  test('a missing folder, an empty one, and its own again', async () => {
    const place = placeOf()
    mkdirSync(join(place, 'pages'))
    await build(place, 'pages')
    const first = tree(join(place, 'pages'))
    await build(place, 'pages')
    expect(tree(join(place, 'pages'))).toEqual(first)
    await build(place, 'deep/er/pages')
    expect(tree(join(place, 'deep/er/pages'))).toEqual(first)
  })

  test('a link, and keeps it', async () => {
    const place = placeOf()
    mkdirSync(join(place, 'elsewhere'))
    symlinkSync(join(place, 'elsewhere'), join(place, 'pages'))
    await build(place, 'pages')
    expect(namesIn(join(place, 'elsewhere'))).toContain('index.html')
  })

  test('papers that other commands wrote there, before the first site and after it', async () => {
    const place = placeOf()
    const papers = ['sheets/EB-1.pdf', 'shipments/SH-1/list.pdf', 'recalls/GR-1.csv']
    const folder = join(place, 'private')
    const lay = (name: string, text: string) => {
      mkdirSync(dirname(join(folder, name)), { recursive: true })
      writeFileSync(join(folder, name), text)
    }
    for (const name of papers) lay(name, name)
    const before = tree(folder)
    await build(place, 'private', 'workshop')
    expect(tree(folder)).toMatchObject(before)
    lay('sheets/EB-2.pdf', 'another')
    const later = tree(folder)
    await build(place, 'private', 'workshop')
    expect(tree(folder)).toMatchObject(later)
  })

  test('no such papers into the public site', async () => {
    const place = placeOf()
    mkdirSync(join(place, 'pages', 'sheets'), { recursive: true })
    await expect(build(place, 'pages')).rejects.toThrow(/is not empty and holds no site/u)
  })
})
