/** The bundle the program starts as: never of other source than there is, and never needed. */

import {
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync
} from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { beforeEach, expect, test } from 'vitest'
import { projectFolder, version } from '../../src/site/project.ts'
import { workplace, run } from '../site/workplace.ts'
import { thorough } from '../thorough.ts'

const main = join('src', 'cli', 'main.ts')

let project: string

const { bundleOf }: { bundleOf(project: URL): Promise<string | undefined> } = await import(
  pathToFileURL(join(projectFolder, 'bin', 'bundle.js')).href
)

/** The program in a folder of its own, with the packages it finds here. */
beforeEach(() => {
  project = workplace()
  const parts = ['bin', 'src', 'templates', 'package.json', 'package-lock.json', 'tsconfig.json']
  for (const part of parts)
    cpSync(join(projectFolder, part), join(project, part), { recursive: true })
  const packages = join(projectFolder, 'node_modules')
  mkdirSync(join(project, 'node_modules'))
  for (const name of readdirSync(packages).filter(name => !name.startsWith('.')))
    symlinkSync(join(packages, name), join(project, 'node_modules', name))
})

/** Put there the bundle of the source as it stands, which the program here starts as: to make one takes seconds. */
async function putBundle(): Promise<void> {
  const file = await bundleOf(pathToFileURL(`${projectFolder}/`))
  const name = basename(dirname(file!))
  cpSync(dirname(file!), join(project, 'node_modules', name), { recursive: true })
}

const help = () => run([process.execPath, join('bin', 'lotfolio.js'), '--help'], project)

const bundles = () =>
  readdirSync(join(project, 'node_modules')).filter(name => name.startsWith('.lotfolio-'))

function edit(from: string, to: string): void {
  const text = readFileSync(join(project, main), 'utf8')
  if (!text.includes(from)) throw new Error(`${main} does not hold ${from}`)
  writeFileSync(
    join(project, main),
    text.replace(from, () => to)
  )
}

/** A program of a few lines in place of ours: what it does makes no difference to how it is started. */
const putSmall = (statement: string) =>
  writeFileSync(
    join(project, main),
    `interface Gone {\n  readonly here: string\n}\n\nexport async function main(args: readonly string[]) {\n  ${statement}\n}\n`
  )

const description = 'Lot pages, certificates and data from batch records.'

test('the source as it stands is what runs, and each state of it has one bundle', async () => {
  putSmall("console.log('First.')")
  expect((await help()).stdout).toBe('First.\n')
  const first = bundles()
  expect(first).toHaveLength(1)
  await help()
  expect(bundles()).toEqual(first)
  edit('First.', 'Edited.')
  expect((await help()).stdout).toBe('Edited.\n')
  expect(bundles()).toHaveLength(2)
  edit('Edited.', 'First.')
  expect((await help()).stdout).toBe('First.\n')
  expect(bundles()).toHaveLength(2)
})

test('what is bundled is what runs', async () => {
  await putBundle()
  const file = join(project, 'node_modules', bundles()[0]!, 'main.cjs')
  const text = readFileSync(file, 'utf8')
  // Of ES modules alone: what CommonJS is given in its place is no Eleventy.
  expect(text).not.toContain('require("@11ty/eleventy")')
  // One letter beyond Latin-1 and Node keeps all of it at twice the size.
  expect(/[^\0-\x7f]/u.exec(text)?.[0]).toBeUndefined()
  writeFileSync(file, text.replace(description, 'Bundled.'))
  expect((await help()).stdout).toContain('Bundled.')
})

test('whatever a bundle depends on makes it anew, the lock of the packages alone as well', async () => {
  const small = workplace()
  const put = (path: string, text: string) => {
    mkdirSync(dirname(join(small, path)), { recursive: true })
    writeFileSync(join(small, path), text)
  }
  const parts = ['package.json', 'package-lock.json', 'tsconfig.json', 'bin/bundle.js']
  for (const part of [...parts, 'src/data.json']) put(part, '{}')
  put(main, 'export const main = 1\n')
  mkdirSync(join(small, 'node_modules'))
  const made = () => bundleOf(pathToFileURL(`${small}/`))
  const known = new Set([await made()])
  for (const part of [...parts, 'src/data.json', main]) {
    const size = known.size
    put(part, `${readFileSync(join(small, part), 'utf8')}\n`)
    known.add(await made())
    expect(known.size, part).toBe(size + 1)
    known.add(await made())
    expect(known.size, part).toBe(size + 1)
  }
  expect(known).not.toContain(undefined)
})

test('several at once all start', async () => {
  putSmall('console.log(args[0])')
  const outcomes = await Promise.all([help(), help(), help()])
  expect(outcomes).toEqual(Array(3).fill({ status: 0, stdout: '--help\n', stderr: '' }))
  expect(bundles()).toHaveLength(1)
})

test('without a place for a bundle the source runs through tsx', async () => {
  // All of it takes seconds to load; of what only commands import, one file is as good as fifty.
  if (!thorough)
    putSmall(
      "console.log((await import('./options.ts')).contentOption().description, (await import('../site/project.ts')).version)"
    )
  const expected = await help()
  expect(expected.stdout).toContain(thorough ? description : version)
  const [name = ''] = bundles()
  rmSync(join(project, 'node_modules', name), { recursive: true })
  // Stands in the way of everybody, root included.
  writeFileSync(join(project, 'node_modules', name), '')
  expect(await help()).toEqual({ ...expected, status: 0, stderr: '' })
  expect(bundles()).toEqual([name])
})

test('a fault of the program names the line of its source', async () => {
  putSmall("throw new Error('fault')")
  const line =
    readFileSync(join(project, main), 'utf8')
      .split('\n')
      .findIndex(text => text.includes("'fault'")) + 1
  const { status, stderr } = await help()
  expect(status).toBe(1)
  expect(stderr).toContain(`${join(project, main)}:${line}:`)
})
