/**
 * The program's commands called in the process of the tests, as a terminal would: an array of
 * arguments and a folder in, exit code and both streams out. Starting Node and loading the program
 * takes longer than most commands; that both ways come to the same is held by
 * tests/cli/processes.test.ts.
 */

import { Console } from 'node:console'
import { Readable, Writable } from 'node:stream'
import { setFlagsFromString } from 'node:v8'
import { main } from '../src/cli/main.ts'

export interface Run {
  readonly status: number | null
  readonly stdout: string
  readonly stderr: string
}

/** A stream that keeps what is written to it. */
class Kept extends Writable {
  text = ''

  override _write(part: Buffer, _: unknown, done: () => void): void {
    this.text += part.toString()
    done()
  }
}

/** Commands change what belongs to the whole process, so one waits for the other. */
let last: Promise<unknown> = Promise.resolve()

/**
 * Run a command to its end.
 *
 * @throws whatever the program did not foresee, with its stack
 */
export function runInProcess(
  args: readonly string[],
  cwd: string,
  environment: Readonly<Record<string, string>>
): Promise<Run> {
  const run = last.then(() => calledIn(args, cwd, environment))
  last = run.catch(() => undefined)
  return run
}

async function calledIn(
  args: readonly string[],
  cwd: string,
  environment: Readonly<Record<string, string>>
): Promise<Run> {
  const [stdout, stderr] = [new Kept(), new Kept()]
  const restore = [
    replace(process, 'stdout', stdout),
    replace(process, 'stderr', stderr),
    replace(process, 'stdin', Readable.from([])),
    replace(process, 'env', { ...environment }),
    replace(globalThis, 'console', new Console(stdout, stderr))
  ]
  const [folder, code] = [process.cwd(), process.exitCode]
  try {
    process.exitCode = undefined
    process.chdir(cwd)
    await main(args)
    return {
      status: Number(process.exitCode ?? 0),
      stdout: stdout.text,
      stderr: stderr.text
    }
  } finally {
    process.chdir(folder)
    process.exitCode = code
    for (const put of restore) put()
    // A build makes Node clean up its memory more often, which is too often for what follows.
    setFlagsFromString('--heap-growing-percent=0')
  }
}

/** Put another value in an object's field; the function returned puts the old one back. */
function replace(object: object, field: string, value: unknown): () => void {
  const old = Object.getOwnPropertyDescriptor(object, field)
  Object.defineProperty(object, field, { value, configurable: true, writable: true })
  return () => {
    Object.defineProperty(object, field, old!)
  }
}
