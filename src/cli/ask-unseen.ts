/** Asking for what nobody else may read. */

import { createInterface } from 'node:readline'
import { Writable } from 'node:stream'
import { Failure } from '../site/failure.ts'

/** Ask for a line that nobody reads over a shoulder: what is typed is not shown. */
export function askUnseen(
  question: string,
  input: NodeJS.ReadableStream,
  output: NodeJS.WritableStream
): Promise<string> {
  const silent = new Writable({ write: (_chunk, _encoding, next) => next() })
  const lines = createInterface({ input, output: silent, terminal: true, historySize: 0 })
  output.write(question)
  return new Promise((given, refused) => {
    lines.once('line', line => {
      given(line)
      lines.close()
    })
    lines.once('SIGINT', () => lines.close())
    lines.once('close', () => {
      output.write('\n')
      refused(new Failure('no pass phrase was given'))
    })
  })
}
