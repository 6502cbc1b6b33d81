/** Builds on request, one at a time, each in a process of its own so that the pages stay within reach. */

import { type ChildProcess, spawn } from 'node:child_process'
import { join } from 'node:path'
import { projectFolder } from '../site/project.ts'

export interface Rebuilder {
  /** Ask for a build; asked for during one, another follows it. */
  readonly request: () => void
  /** Resolves when no build is running or asked for, to whether the last one succeeded. */
  readonly settled: () => Promise<boolean>
  /** End the running build, and start none again. */
  readonly stop: () => void
}

/**
 * Builds with these arguments of the build command; they report to the terminal themselves.
 *
 * @param done called after each, with whether it succeeded
 */
export function rebuilder(
  args: readonly string[],
  done: (succeeded: boolean) => void = () => undefined
): Rebuilder {
  let child: ChildProcess | undefined
  let asked = false
  let stopped = false
  let running = Promise.resolve(false)
  const run = async () => {
    let succeeded = false
    while (asked && !stopped) {
      asked = false
      child = spawnBuild(args)
      succeeded = await ended(child)
      done(succeeded)
    }
    child = undefined
    return succeeded
  }
  return {
    request: () => {
      asked = true
      if (!child) running = run()
    },
    settled: () => running,
    stop: () => {
      stopped = true
      child?.kill()
    }
  }
}

const spawnBuild = (args: readonly string[]): ChildProcess =>
  spawn(
    process.execPath,
    [...process.execArgv, join(projectFolder, 'bin', 'lotfolio.js'), 'build', ...args],
    { stdio: ['ignore', 'inherit', 'inherit'] }
  )

/** Whether a build ended well. */
const ended = (child: ChildProcess): Promise<boolean> =>
  new Promise((resolve, reject) => {
    child.once('error', reject)
    child.once('exit', code => resolve(code === 0))
  })
