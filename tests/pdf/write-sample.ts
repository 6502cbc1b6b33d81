/** Writes a sample certificate to standard output: a program of its own, to start elsewhere. */

import { certificatePdf } from '../../src/pdf/certificate.ts'
import { accentedDocument, attachment } from './samples.ts'

const write = async (): Promise<void> => {
  process.stdout.write(await certificatePdf(accentedDocument, attachment))
}

await write()
