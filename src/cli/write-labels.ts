/** Labels as files. */

import { join } from 'node:path'
import type { LabelDocument } from '../documents/label-types.ts'
import type { LabelPrint } from '../pdf/label.ts'
import { LabelTooSmall } from '../pdf/label-layout.ts'
import { Failure } from '../site/failure.ts'
import { writeOver } from './write.ts'

/**
 * Write one PDF a label.
 *
 * @returns the names of the files
 * @throws Failure where a text does not fit on the stock: nothing is written then
 */
export async function writeLabels(
  folder: string,
  labels: readonly LabelDocument[],
  print: LabelPrint = {}
): Promise<string[]> {
  const { labelPdf } = await import('../pdf/label.ts')
  const drawn = labels.map(label => ({
    name: label.fileName,
    bytes: setOn(label, print, labelPdf)
  }))
  for (const { name, bytes } of drawn) await writeOver(join(folder, name), bytes)
  return drawn.map(({ name }) => name)
}

function setOn(
  label: LabelDocument,
  print: LabelPrint,
  labelPdf: (document: LabelDocument, print: LabelPrint) => Uint8Array
): Uint8Array {
  const [short, long] = label.minima.label_mm
  const size = print.stock?.label
  if (size && (Math.min(...size) < short || Math.max(...size) < long))
    throw new Failure(
      `${label.title}: needs at least ${short} × ${long} mm, and a label of the stock has ${size.join(' × ')} mm`
    )
  try {
    return labelPdf(label, print)
  } catch (error) {
    if (error instanceof LabelTooSmall)
      throw new Failure(`${error.message}: take larger stock, or fewer languages`)
    throw error
  }
}
