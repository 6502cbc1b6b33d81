/**
 * A walk of the README as a reader takes it: files written as it prints them, commands called as it
 * prints them, what it says they answer. Where a reader puts numbers of his own, so does the test.
 */

import { appendFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { root } from './root.ts'
import type { Run } from './in-process.ts'

type Step =
  | { readonly is: 'file'; readonly path: string; readonly text: string; readonly isAdded: boolean }
  | { readonly is: 'command'; readonly line: string }
  | { readonly is: 'answer'; readonly text: string }

/** The steps under a heading of the README, in order. */
function stepsUnder(heading: string): Step[] {
  const readme = readFileSync(join(root, 'README.md'), 'utf8')
  const level = /^#+/u.exec(heading)![0]
  const start = readme.indexOf(`\n${heading}\n`)
  if (start < 0) throw new Error(`README.md has no heading ${heading}`)
  const rest = readme.slice(start + heading.length + 2)
  const end = rest.search(new RegExp(`^#{2,${level.length}} `, 'mu'))
  return stepsIn(end < 0 ? rest : rest.slice(0, end))
}

function stepsIn(section: string): Step[] {
  const blocks = [...section.matchAll(/^( *)```(\w*)\n(.*?)^\1```$/gmsu)]
  return blocks.flatMap((match, index): Step[] => {
    const [, indent, kind, block] = match
    const text = block!.replace(new RegExp(`^${indent}`, 'gmu'), '')
    if (kind === '')
      return text
        .trim()
        .split('\n')
        .map(line => ({ is: 'command', line }))
    if (kind === 'text') return [{ is: 'answer', text }]
    const before = blocks[index - 1]
    const said = section.slice(before ? before.index + before[0].length : 0, match.index)
    // A command may stand between what names a file and what it holds.
    const named = [...section.slice(0, match.index).matchAll(/`(\.\.\/[\w./-]+\.(?:yaml|csv))`/gu)]
    const path = named.at(-1)?.[1]
    if (path === undefined) throw new Error(`no file is named before: ${text}`)
    return [{ is: 'file', path, text, isAdded: /to\s+the\s+end\s+of/u.test(said) }]
  })
}

export type Call = (args: readonly string[], folder: string) => Promise<Run>

/** Every command that was called, and what it answered. */
export type Walked = readonly { readonly line: string; readonly run: Run }[]

const wordsOf = (line: string): string[] =>
  [...line.matchAll(/"([^"]*)"|(\S+)/gu)].map(([, quoted, plain]) => quoted ?? plain!)

/**
 * Take the steps in a folder that stands for the one beside the program.
 *
 * @param call how a command is called, to its end
 */
async function walk(
  steps: readonly Step[],
  place: string,
  call: Call,
  { answers = [], own = text => text, beforeCommand = () => undefined }: Reader = {}
): Promise<Walked> {
  const runs: { line: string; run: Run }[] = []
  for (const step of steps) {
    if (step.is === 'file') write(join(place, step.path.replace('../', '')), step, own)
    if (step.is === 'command') {
      const [npm, how, name, dashes, ...args] = wordsOf(step.line.replaceAll('../', ''))
      if (npm !== 'npm' || how !== 'run' || dashes !== '--') throw new Error(`what is ${step.line}`)
      beforeCommand(name!, place)
      const given = name === 'setup' ? [...args, ...answers] : args
      runs.push({ line: step.line, run: await call([name!, ...given], place) })
    }
    if (step.is === 'answer' && !runs.at(-1)?.run.stdout.includes(step.text.replaceAll('../', '')))
      throw new Error(
        `${runs.at(-1)?.line ?? 'nothing'} does not answer\n${step.text}but\n${runs.at(-1)?.run.stdout ?? ''}${runs.at(-1)?.run.stderr ?? ''}`
      )
  }
  return runs
}

/** What a reader does beside following. */
interface Reader {
  /** What setup asks for. */
  readonly answers?: readonly string[]
  /** Numbers of his own in a file. */
  readonly own?: (text: string, path: string) => string
  /** What the text asks for in words. */
  readonly beforeCommand?: (name: string, place: string) => void
}

function write(path: string, step: Step & { is: 'file' }, own: NonNullable<Reader['own']>): void {
  const text = own(step.text, step.path)
  mkdirSync(dirname(path), { recursive: true })
  if (step.isAdded) appendFileSync(path, text)
  else writeFileSync(path, text)
}

const answers = [
  ['--name', 'Thimblewick Graphite'],
  ['--address', '3 Kiln Yard; Oddlebrook'],
  ['--email', 'papers@thimblewick.example.org'],
  ['--telephone', '555 0142'],
  ['--person', 'Orla Fenwhistle']
].flat()

/** Numbers that a reader has and the README has not. */
const own = (text: string, path: string) =>
  text.replace('RATIO', '2').replace('MASS', path.endsWith('EB-2.yaml') ? '60.1 g' : '400 g')

/** 'Take the line out': what is told in words. */
function withoutDraft(name: string, place: string) {
  if (name !== 'check') return
  const foil = join(place, 'my-workshop', 'foils', 'FL-1.yaml')
  writeFileSync(foil, readFileSync(foil, 'utf8').replace('draft: yes\n', ''))
}

/** The walk through a first batch, in a workshop just set up. */
export function firstBatch(place: string, call: Call): Promise<Walked> {
  const line = 'npm run setup -- ../my-workshop --date 2026-03-01'
  const steps = stepsUnder('## A first batch, from plan to foil')
  const reader = { answers, own, beforeCommand: withoutDraft }
  return walk([{ is: 'command', line }, ...steps], place, call, reader)
}

/** The walk from an old list to a certificate and a label. */
export const oldList = (place: string, call: Call): Promise<Walked> =>
  walk(stepsUnder('### The first hour from an old spreadsheet'), place, call, { answers })
