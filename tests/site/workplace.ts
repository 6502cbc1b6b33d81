/** Folders, sites and programs for tests that build for real. */

import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { once } from 'node:events'
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'
import { inject, onTestFinished } from 'vitest'
import { feeds } from '../../src/data/feeds.ts'
import { projectFolder } from '../../src/site/project.ts'
import { steps as ownSteps, type Steps } from '../../src/site/steps.ts'
import { siteDocument } from '../fixtures/documents.ts'
import { type Run, runInProcess } from '../in-process.ts'

const temporaryFolder = (): string => realpathSync(mkdtempSync(join(tmpdir(), 'lotfolio test ')))

const remove = (folder: string): void => rmSync(folder, { recursive: true, force: true })

/** A folder of its own, with a space in its name, gone when the test ends. */
export function workplace(): string {
  const folder = temporaryFolder()
  onTestFinished(() => remove(folder))
  return folder
}

/**
 * Papers rendered for one test serve the others of this process, as most of a build's time goes there;
 * not those of the process beside it, as a build removes what it has no use for.
 */
const sharedCache = join(inject('runFolder'), `papers ${process.pid}`)
mkdirSync(sharedCache, { recursive: true })

/** A workplace with the demo records in `content`, and papers of earlier builds unless there are to be none. */
export function demoWorkplace({ papers }: DemoOptions = { papers: sharedCache }): string {
  const folder = workplace()
  cpSync(join(projectFolder, 'content'), join(folder, 'content'), { recursive: true })
  if (papers !== undefined) symlinkSync(papers, join(folder, '.cache'), 'junction')
  return folder
}

interface DemoOptions {
  /** Folder of a cache; those of this process's other tests where it is left out. */
  readonly papers: string | undefined
}

/** A workplace with one lot of each kind, all public: a whole site in a fraction of the time. */
export function smallWorkplace(): string {
  const folder = workplace()
  fillSmall(folder)
  return folder
}

/** Put its records into a folder. */
export function fillSmall(folder: string): void {
  const records = join(projectFolder, 'tests', 'fixtures', 'base')
  cpSync(records, join(folder, 'content'), { recursive: true })
  const grades = join(folder, 'content', 'grades')
  for (const name of namesIn(grades))
    appendFileSync(join(grades, name), 'public: [results, working, chain, sampling]\n')
}

/** Every file under a folder with the hash of its bytes. */
export function tree(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true })
  const files = entries.filter(entry => entry.isFile())
  const paths = files.map(entry => join(entry.parentPath, entry.name)).sort()
  return Object.fromEntries(
    paths.map(path => [path.slice(folder.length + 1).replaceAll('\\', '/'), hashOf(path)])
  )
}

const hashOf = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex')

/** Paths at which two trees differ. */
export const differences = (a: Record<string, string>, b: Record<string, string>): string[] =>
  [...new Set([...Object.keys(a), ...Object.keys(b)])].filter(path => a[path] !== b[path]).sort()

/** Names in a folder, sorted; a full listing beside a site shows what a build left lying. */
export const namesIn = (folder: string): string[] => readdirSync(folder).sort()

/** Steps that yield the invented documents and small papers, but the real pages. */
export const inventedSteps = (changes: Partial<Steps> = {}): Steps => ({
  buildDocuments: () => ({ site: siteDocument, problems: [] }),
  certificatePdf: document => Promise.resolve(Buffer.from(`%PDF-2.0 ${document.number}`)),
  labelPdf: document => Buffer.from(`%PDF-2.0 ${document.title}`),
  datasheetPdf: document => Buffer.from(`%PDF-2.0 ${document.id}`),
  statementPdf: document => Buffer.from(`%PDF-2.0 ${document.title} of ${document.lot}`),
  feeds,
  lotData: page => JSON.stringify({ lot: page.document.lot }),
  templateTools: ownSteps.templateTools,
  renderer: () => Promise.resolve('1'),
  ...changes
})

export const program = join(projectFolder, 'bin', 'lotfolio.js')

/** Run a program to its end, without what npm sets for scripts. */
export async function run(
  command: readonly string[],
  cwd: string,
  environment: Readonly<Record<string, string>> = {}
): Promise<Run> {
  const [file = '', ...args] = command
  const child = spawn(file, args, {
    cwd,
    env: { ...plainEnvironment(), ...environment },
    stdio: ['ignore', 'pipe', 'pipe']
  })
  const [stdout, stderr, [status]] = await Promise.all([
    text(child.stdout),
    text(child.stderr),
    once(child, 'close') as Promise<[number | null]>
  ])
  return { status, stdout, stderr }
}

/** Run lotfolio to its end in a process of its own: for what is about processes, or must start afresh. */
export const lotfolioProcess = (
  args: readonly string[],
  cwd: string,
  environment: Readonly<Record<string, string>> = {}
): Promise<Run> => run([process.execPath, program, ...args], cwd, environment)

/** Run lotfolio to its end, without starting a process for it; `start` always gets its own. */
export const lotfolio = (
  args: readonly string[],
  cwd: string,
  environment: Readonly<Record<string, string>> = {}
): Promise<Run> =>
  args[0] === 'start'
    ? lotfolioProcess(args, cwd, environment)
    : runInProcess(args, cwd, { ...plainEnvironment(), ...environment })

/** The environment without npm's additions and vitest's own. */
export const plainEnvironment = (): Record<string, string> =>
  Object.fromEntries(
    Object.entries(process.env).flatMap(([name, value]) =>
      value === undefined || /^(?:npm_|INIT_CWD$|NODE_OPTIONS$|NODE_ENV$|VITEST)/u.test(name)
        ? []
        : [[name, value]]
    )
  )
