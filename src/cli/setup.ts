/** lotfolio setup: an empty workshop of one's own. */

import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { mkdir, readdir, writeFile } from 'node:fs/promises'
import { dirname, join, relative, resolve } from 'node:path'
import { createInterface } from 'node:readline/promises'
import { Command } from 'commander'
import { type StarterAnswers, starterWorkshop } from '../records/starter.ts'
import { Failure } from '../site/failure.ts'
import { userFolder } from './folders.ts'
import { paperOption } from './options.ts'
import { today } from './today.ts'
import { refuseStray } from './usage.ts'

interface SetupOptions {
  readonly name?: string
  readonly address?: string
  readonly email?: string
  readonly telephone?: string
  readonly role: string
  readonly person?: string
  readonly paper?: 'A4' | 'Letter'
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
    .addOption(paperOption())
    .option('--date <DATE>', 'day the first method and grade are valid from (default: today)')
    .option('--git', 'make it a git repository')
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(setUp)

async function setUp(dir: string, options: SetupOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const folder = resolve(userFolder(process.env), dir)
  if (existsSync(folder) && (await readdir(folder)).length > 0)
    throw new Failure(`${dir} is not empty: name a new folder`)
  const answers = await ask(options)
  for (const [path, text] of starterWorkshop(answers)) {
    await mkdir(dirname(join(folder, path)), { recursive: true })
    await writeFile(join(folder, path), text, { flag: 'wx' })
  }
  if (options.git) makeRepository(folder)
  const shown = relative(process.cwd(), folder)
  process.stdout.write(
    [
      `Wrote a workshop to ${relative(userFolder(process.env), folder)}`,
      'Next:',
      `  lotfolio check --content ${shown}`,
      `  lotfolio build --content ${shown} --edition workshop --out ${shown}-private`,
      ''
    ].join('\n')
  )
}

/** Questions for what no option answers. */
const questions = {
  name: 'Name of the workshop',
  address: 'Address, lines parted by ;',
  email: 'E-mail for customers',
  telephone: 'Telephone for customers',
  person: 'Who signs (kept private)'
} as const

async function ask(options: SetupOptions): Promise<StarterAnswers> {
  const missing = (Object.keys(questions) as (keyof typeof questions)[]).filter(
    name => options[name] === undefined
  )
  if (missing.length > 0 && !process.stdin.isTTY)
    throw new Failure(
      `without a terminal to ask on, give ${missing.map(name => `--${name}`).join(', ')}`
    )
  const answered = await askFor(missing)
  const answer = (name: keyof typeof questions) => options[name] ?? answered[name] ?? ''
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
    paper: options.paper ?? 'A4',
    from: options.date ?? today()
  }
}

/** Ask each question until it has an answer. */
async function askFor(names: readonly (keyof typeof questions)[]): Promise<Record<string, string>> {
  if (names.length === 0) return {}
  const terminal = createInterface({ input: process.stdin, output: process.stdout })
  const answers: Record<string, string> = {}
  for (const name of names)
    while (!answers[name]) answers[name] = (await terminal.question(`${questions[name]}: `)).trim()
  terminal.close()
  return answers
}

function makeRepository(folder: string): void {
  const { status, error } = spawnSync('git', ['init', '--quiet', folder], { stdio: 'inherit' })
  if (error || status !== 0)
    throw new Failure('git could not make the repository; the records are there')
}
