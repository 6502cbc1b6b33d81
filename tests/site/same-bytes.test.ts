import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { writeMarker } from '../../src/site/marker.ts'
import { projectFolder } from '../../src/site/project.ts'
import { builtDemo, builtPapers } from './built-demo.ts'
import { builtSmallWorkplace } from './built-small.ts'
import { done } from './issuing.ts'
import { demoWorkplace, differences, lotfolio, run, tree, workplace } from './workplace.ts'

describe('the same bytes', () => {
  /** Built in the process of the tests, in another folder. */
  let reference: Record<string, string>
  /** A place whose papers are those of an earlier build. */
  const place = () => demoWorkplace({ papers: builtPapers })

  beforeAll(async () => {
    reference = tree(await builtDemo('public'))
    expect(Object.keys(reference)).toContain('index.html')
  }, 180_000)

  // A process of its own, as a time zone is its process's; nothing was kept for it.
  test('from plain Eleventy, in another time zone and locale', async () => {
    const out = join(workplace(), 'plain')
    mkdirSync(out)
    await writeMarker(out, 'public')
    writeFileSync(join(out, 'stale.html'), 'of an earlier build')
    const { status } = await eleventy(out, {
      TZ: 'Pacific/Chatham',
      LANG: 'tr_TR.UTF-8',
      LC_ALL: 'tr_TR.UTF-8'
    })
    expect(status).toBe(0)
    expect(differences(tree(out), reference)).toEqual([])
  })

  test('from records saved on Windows: CRLF line ends, a byte order mark', async () => {
    const windows = place()
    const content = join(windows, 'content')
    for (const name of readdirSync(content, { recursive: true, encoding: 'utf8' }))
      if (name.endsWith('.yaml')) saveAsOnWindows(join(content, name))
    expect((await lotfolio(['build'], windows)).stderr).toBe('')
    expect(differences(tree(join(windows, '_site')), reference)).toEqual([])
  })

  test('from a folder whose name has spaces and other signs', async () => {
    const plain = await builtSmallWorkplace()
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
const eleventy = (out: string, environment: Record<string, string> = {}) =>
  run(
    [
      process.execPath,
      ...nodeOptions(),
      join(projectFolder, 'node_modules', '@11ty', 'eleventy', 'cmd.cjs'),
      '--config=eleventy.config.ts',
      `--output=${relative(projectFolder, out)}`
    ],
    projectFolder,
    environment
  )

function nodeOptions(): string[] {
  const line = /^node-options=(.*)$/mu.exec(readFileSync(join(projectFolder, '.npmrc'), 'utf8'))
  return line?.[1] ? [line[1]] : []
}

function saveAsOnWindows(path: string): void {
  writeFileSync(path, `\uFEFF${readFileSync(path, 'utf8').replaceAll('\n', '\r\n')}`)
}
