/** Progress of long work, for a person at a terminal. */

import type { Progress } from '../site/papers.ts'

/** From how many items on work is long enough to be told about. */
const LONG = 25

/** A line on standard error that counts up and goes away; silent in a pipe or file. */
export function showProgress(noun: string, stream = process.stderr): Progress {
  return (done, total) => {
    if (!stream.isTTY || total < LONG) return
    stream.write(done === total ? '\r\u001B[K' : `\r${done} of ${total} ${noun}`)
  }
}
