/** Writes a sample to standard output: a program of its own, to start elsewhere. */

import { certificatePdf } from '../../src/pdf/certificate.ts'
import { labelPdf } from '../../src/pdf/label.ts'
import { sampleLabel } from './label-samples.ts'
import { accentedDocument, attachment } from './samples.ts'

const write = async (): Promise<void> => {
  process.stdout.write(
    process.argv[2] === 'label'
      ? labelPdf(sampleLabel)
      : await certificatePdf(accentedDocument, attachment)
  )
}

await write()
