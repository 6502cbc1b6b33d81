/** lotfolio verify: whether a certificate somebody holds is genuine, and still stands. */

import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { Command } from 'commander'
import { textOf as decoded } from '../register/bytes.ts'
import { capital } from '../documents/capital.ts'
import { saltsOf } from '../documents/sent-copies.ts'
import { copyListText } from '../register/copy-list.ts'
import { fingerprint } from '../register/fingerprint.ts'
import { publishedText } from '../register/published.ts'
import { type Evidence, verify } from '../register/verify.ts'
import { Failure, isMissing, plainFault } from '../site/failure.ts'
import { type Holding, holdingOf } from '../verify/holding.ts'
import { folderFrom, userFolder } from './folders.ts'
import { contentOption } from './options.ts'
import { soundRegister } from './register-work.ts'
import { refuseStray } from './usage.ts'

interface VerifyOptions {
  readonly content?: string
  readonly register?: string
  readonly copies?: string
  readonly proof?: string
  readonly offline?: true
}

const examples = `
Examples:
  lotfolio verify CT-26-001-r1.pdf
  lotfolio verify CT-26-001-r1.json --register register.json
  lotfolio verify CT-26-001-r1-SH-26-07.pdf --register register.json --copies copies.json
  lotfolio verify CT-26-001-r1.json --proof CT-26-001-r1.proof.json --offline

Compared is with the workshop's own register, or with a register.json saved from the producer's site.
With --offline only what the certificate itself carries is looked at: that shows whether its data is
what was issued, not whether it still stands. A PDF is unknown then, as only the register names the
bytes of its pages.
Exit code: 0 for genuine, 1 for superseded, withdrawn, altered or unknown, 2 for wrong usage.`

export const verifyCommand = (): Command =>
  new Command('verify')
    .description('check a certificate someone holds against the register')
    .argument('<file>', 'the certificate, PDF or JSON')
    .addOption(contentOption())
    .option('--register <FILE>', "register.json of the producer's site (default: the records' own)")
    .option('--copies <FILE>', "copies.json of the producer's site, for a customer's copy")
    .option('--proof <FILE>', 'proof that came beside a JSON file')
    .option('--offline', 'look at no register')
    .addHelpText('after', examples)
    .allowExcessArguments()
    .action(check)

async function check(file: string, options: VerifyOptions, command: Command): Promise<void> {
  refuseStray(command, process.env, 1)
  const holding = await holdingOf(await bytesOf(file))
  if (typeof holding === 'string') return tell('unknown', [holding])
  const { word, sentences } = await verify(holding.data, await evidenceFor(holding, options))
  tell(word, sentences)
}

function tell(word: string, sentences: readonly string[]): void {
  process.stdout.write(`${[capital(word), ...sentences].join('\n  ')}\n`)
  if (word !== 'genuine') process.exitCode = 1
}

async function evidenceFor(holding: Holding, options: VerifyOptions): Promise<Evidence> {
  const { proof = holding.proof, pdf } = {
    ...holding,
    ...(options.proof === undefined ? {} : { proof: await textOf(options.proof) })
  }
  return {
    ...(proof === undefined ? {} : { proof }),
    ...(pdf ? { pdf: { sha256: await fingerprint(pdf) } } : {}),
    ...(options.offline ? {} : await compared(options))
  }
}

/** The register given, or that of the records; and the list of copies beside it. */
async function compared({ register, copies, content }: VerifyOptions): Promise<Evidence> {
  const list = copies === undefined ? {} : { copies: await textOf(copies) }
  if (register !== undefined) return { published: await textOf(register), ...list }
  const own = await soundRegister(folderFrom(content, 'content'))
  return {
    published: await publishedText(own.log, own.tree),
    copies: await copyListText(own.copies.chain, saltsOf(own.copies), own.log),
    ...list
  }
}

async function textOf(path: string): Promise<string> {
  const text = decoded(await bytesOf(path))
  if (text === undefined) throw new Failure(`${path}: is not UTF-8 text`)
  return text
}

async function bytesOf(typed: string): Promise<Buffer> {
  const path = resolve(userFolder(process.env), typed)
  try {
    return await readFile(path)
  } catch (error) {
    if (isMissing(error)) throw new Failure(`${path}: does not exist`)
    if (error instanceof Error && 'code' in error && error.code === 'EISDIR')
      throw new Failure(`${path}: is a folder, where a file should be`)
    throw plainFault(error)
  }
}
