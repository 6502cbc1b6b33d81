/** lotfolio setup: an empty workshop of one's own. */

import { spawnSync } from 'node:child_process'
import { readdir } from 'node:fs/promises'
import { join, relative, resolve } from 'node:path'
import { createInterface } from 'node:readline/promises'
import { Command, Option } from 'commander'
import { type StarterAnswers, starterWorkshop } from '../records/starter.ts'
import { Failure, isMissing, plainFault } from '../site/failure.ts'
import { isRunByNpm, userFolder } from './folders.ts'
import { calendarDate } from './options.ts'
import { today } from './today.ts'
import { refuseStray, UsageError } from './usage.ts'
import { writeNew } from './write.ts'

interface SetupOptions {
  readonly name?: string
  readonly address?: string
  readonly email?: string
  readonly telephone?: string
  readonly role: string
  readonly person?: string
  readonly paper: 'A4' | 'Letter'
  readonly date?: string
  readonly git?: boolean
}

const examples = `
Examples:
  lotfolio setup ../my-workshop
  lotfolio setup ../my-workshop --name "Hillside Flake" --address "1 Yard Lane; Hillside" \\
    --email papers@hillside.example.org --telephone "555 0100" --person "A. Maker" --git

What is not given as an option is asked. The folder must be empty or not there yet.`

export const setupCommand = (): Command =>
  new Command('setup')
    .description('make a content folder of your own: producer, instruments, method, grade, a draft')
    .argument('<dir>', 'folder to make')
    .option('--name <NAME>', 'the workshop, as customers know it')
    .option('--address <LINES>', 'postal address, lines parted by ;')
    .option('--email <ADDRESS>', 'where customers write')
    .option('--telephone <NUMBER>', 'where customers call')
    .option('--person <NAME>', 'who signs; kept private')
    .option('--role <ROLE>', 'their role, printed on papers', 'quality manager')
    .addOption(
      new Option('--paper <SIZE>', 'paper of the certificates')
        .choices(['A4', 'Letter'])
        .default('A4')
    )
    .option(
      '--date <DATE>',
      'day the first method and grade are valid from: no later than your first batch (default: today)',
      calendarDate
    )
    .option('--git', 'make it a git repository')
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(setUp)

async function setUp(dir: string, options: SetupOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const folder = resolve(userFolder(process.env), dir)
  await refuseTaken(folder, dir)
  const answers = await ask(options)
  for (const [path, text] of starterWorkshop(answers)) await writeNew(join(folder, path), text)
  if (options.git) makeRepository(folder)
  process.stdout.write(nextSteps(relative(userFolder(process.env), folder) || '.'))
}

async function refuseTaken(folder: string, dir: string): Promise<void> {
  try {
    if ((await readdir(folder)).length === 0) return
  } catch (error) {
    if (isMissing(error)) return
    if (!(error instanceof Error && 'code' in error && error.code === 'ENOTDIR'))
      throw plainFault(error)
    throw new Failure(`${dir} is a file: name a new folder`)
  }
  throw new Failure(`${dir} is not empty: name a new folder`)
}

/** The calls that come next, in the way this one was made. */
function nextSteps(folder: string): string {
  const path = (name: string) => (/^[\w./\\-]+$/u.test(name) ? name : `"${name}"`)
  const call = (command: string) => {
    if (isRunByNpm(process.env)) return `npm run ${command} --`
    return process.env['npm_command'] === 'exec'
      ? `npx --no-install lotfolio ${command}`
      : `lotfolio ${command}`
  }
  const content = `--content ${path(folder)}`
  return [
    `Wrote a workshop to ${folder}`,
    'Next, fill in the first batch, in its folder batches; then',
    `  ${call('check')} ${content}`,
    `  ${call('build')} ${content} --edition workshop --out ${path(`${folder}-private`)}`,
    ''
  ].join('\n')
}

/** Questions for what no option answers. */
const questions = {
  name: 'Name of the workshop',
  address: 'Address, lines parted by ;',
  email: 'E-mail for customers',
  telephone: 'Telephone for customers',
  person: 'Who signs (kept private)'
} as const

type Question = keyof typeof questions

async function ask(options: SetupOptions): Promise<StarterAnswers> {
  const names = Object.keys(questions) as Question[]
  const blank = names.find(name => options[name] !== undefined && isBlank(options[name]))
  if (blank) throw new UsageError(`--${blank} says nothing`)
  const missing = names.filter(name => options[name] === undefined)
  if (missing.length > 0 && !process.stdin.isTTY)
    throw new UsageError(
      `without a terminal to ask on, give ${missing.map(name => `--${name}`).join(', ')}`
    )
  const answered = await askFor(missing)
  const answer = (name: Question) => (options[name] ?? answered[name] ?? '').trim()
  return {
    name: answer('name'),
    address: answer('address')
      .split(';')
      .map(line => line.trim())
      .filter(line => line !== ''),
    email: answer('email'),
    telephone: answer('telephone'),
    person: answer('person'),
    role: options.role,
    paper: options.paper,
    from: options.date ?? today()
  }
}

/** Whether an answer holds nothing but what parts its lines. */
const isBlank = (answer: string) => /^[\s;]*$/u.test(answer)

/** Ask each question until it has an answer. */
async function askFor(names: readonly Question[]): Promise<Partial<Record<Question, string>>> {
  if (names.length === 0) return {}
  const terminal = createInterface({ input: process.stdin, output: process.stdout })
  const answers: Partial<Record<Question, string>> = {}
  try {
    for (const name of names)
      while (isBlank(answers[name] ?? ''))
        answers[name] = await terminal.question(`${questions[name]}: `)
  } catch (error) {
    if (!(error instanceof Error && error.name === 'AbortError')) throw error
    process.stdout.write('\n')
    throw new Failure('stopped: nothing is written')
  } finally {
    terminal.close()
  }
  return answers
}

function makeRepository(folder: string): void {
  const { status, error } = spawnSync('git', ['init', '--quiet', folder], { stdio: 'inherit' })
  if (error || status !== 0)
    throw new Failure('git could not make the repository; the records are there')
}
