import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { afterAll, describe, expect, inject, test } from 'vitest'
import { writeMarker } from '../../src/site/marker.ts'
import { projectFolder } from '../../src/site/project.ts'
import { done, workshopOf } from './issuing.ts'
import {
  demoWorkplace,
  differences,
  lotfolio,
  lotfolioProcess,
  run,
  tree,
  workplace
} from './workplace.ts'

let reference: Record<string, string>

/** A place at which nothing was kept from any other; it stands until all are compared. */
const first = join(inject('runFolder'), 'first place')
afterAll(() => rmSync(first, { recursive: true, force: true }))

test('a site is built', async () => {
  cpSync(join(projectFolder, 'content'), join(first, 'content'), { recursive: true })
  reference = tree(join(await built(first), '_site'))
  expect(Object.keys(reference)).toContain('index.html')
})

/** A workplace, its public site built; by a process of its own, as a time zone is its process's. */
async function built(place: string, environment: Record<string, string> = {}): Promise<string> {
  const { status, stderr } = await lotfolioProcess(['build'], place, environment)
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
  return place
}

describe('the same bytes', () => {
  test('in another folder, time zone and locale', async () => {
    const place = await built(demoWorkplace({ papers: undefined }), {
      TZ: 'Pacific/Chatham',
      LANG: 'tr_TR.UTF-8',
      LC_ALL: 'tr_TR.UTF-8'
    })
    expect(differences(tree(join(place, '_site')), reference)).toEqual([])
  })

  test('with papers kept from an earlier build', async () => {
    expect((await lotfolio(['build'], first)).stderr).toBe('')
    expect(differences(tree(join(first, '_site')), reference)).toEqual([])
  })

  test('from records saved on Windows: CRLF line ends, a byte order mark', async () => {
    const place = demoWorkplace({ papers: join(first, '.cache') })
    const content = join(place, 'content')
    for (const name of readdirSync(content, { recursive: true, encoding: 'utf8' }))
      if (name.endsWith('.yaml')) saveAsOnWindows(join(content, name))
    expect((await lotfolio(['build'], place)).stderr).toBe('')
    expect(differences(tree(join(place, '_site')), reference)).toEqual([])
  })

  test('from a folder whose name has spaces and other signs', async () => {
    const plain = workshopOf()
    await done(plain, 'issue', 'EB-1', '--date', '2026-03-01')
    const place = workplace()
    const content = join(place, 'my récords & co')
    cpSync(join(plain, 'content'), content, { recursive: true })
    cpSync(join(plain, 'archive'), join(place, 'archive'), { recursive: true })
    await done(plain, 'build')
    const out = join(place, 'the site #1 (100 %)')
    mkdirSync(join(place, 'sub'))
    const args = ['build', '--content', '../my récords & co', '--out', '../the site #1 (100 %)']
    const { stderr } = await lotfolio(args, join(place, 'sub'))
    expect(stderr).toBe('')
    const files = tree(out)
    expect(Object.keys(files)).toContain('certificates/CT-1/CT-1-r1.pdf')
    expect(differences(files, tree(join(plain, '_site')))).toEqual([])
  })

  test('from plain Eleventy', async () => {
    const out = join(workplace(), 'plain')
    mkdirSync(out)
    await writeMarker(out, 'public')
    writeFileSync(join(out, 'stale.html'), 'of an earlier build')
    expect((await eleventy(out)).status).toBe(0)
    expect(differences(tree(out), reference)).toEqual([])
  })
})

test('plain Eleventy refuses a folder that is not ours', async () => {
  const out = join(workplace(), 'docs')
  mkdirSync(out)
  writeFileSync(join(out, 'mine.txt'), 'mine')
  const { status, stderr } = await eleventy(out)
  expect(status).toBe(1)
  expect(stderr).toContain('is not empty and holds no site of ours')
  expect(Object.keys(tree(out))).toEqual(['mine.txt'])
})

/** Plain Eleventy in the checkout, as npx runs it with the project's .npmrc. */
const eleventy = (out: string) =>
  run(
    [
      process.execPath,
      ...nodeOptions(),
      join(projectFolder, 'node_modules', '@11ty', 'eleventy', 'cmd.cjs'),
      '--config=eleventy.config.ts',
      `--output=${relative(projectFolder, out)}`
    ],
    projectFolder
  )

function nodeOptions(): string[] {
  const line = /^node-options=(.*)$/mu.exec(readFileSync(join(projectFolder, '.npmrc'), 'utf8'))
  return line?.[1] ? [line[1]] : []
}

function saveAsOnWindows(path: string): void {
  writeFileSync(path, `\uFEFF${readFileSync(path, 'utf8').replaceAll('\n', '\r\n')}`)
}
