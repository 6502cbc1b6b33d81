/** The files beside the pages: each lot's data and certificates. */

import { mkdir, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { LOT_DATA_VERSION, lotDataJsonSchema } from '../documents/lot-data.ts'
import type { LotPage, SiteDocument } from '../documents/types.ts'
import type { PaperCache } from './paper-cache.ts'
import type { Attachment, Steps } from './steps.ts'

/** Told after each lot how many are done, of how many. */
export type Progress = (done: number, total: number) => void

export interface PaperTools {
  readonly steps: Steps
  /** Absent, every paper is rendered anew. */
  readonly cache?: PaperCache
  readonly progress?: Progress
}

/** What every data file keeps to, for whoever reads one. */
const dataSchemaPath = `schemas/lot-data-${LOT_DATA_VERSION}.json`

/** Addresses of all files beside the pages. */
export const paperPaths = (site: SiteDocument): string[] => [
  dataSchemaPath,
  ...site.lots.flatMap(page => [page.dataUrl, ...page.certificates.map(({ url }) => url)])
]

/** Write the files beside the pages into a site's folder, lot after lot. */
export async function writePapers(
  site: SiteDocument,
  folder: string,
  { steps, cache, progress }: PaperTools
): Promise<void> {
  const renderer = await steps.renderer()
  const schema = `${JSON.stringify(lotDataJsonSchema(), null, 2)}\n`
  await write(join(folder, dataSchemaPath), Buffer.from(schema, 'utf8'))
  for (const [index, page] of site.lots.entries()) {
    await write(join(folder, page.dataUrl), Buffer.from(steps.lotData(page, site), 'utf8'))
    const attachment = attachmentOf(page)
    for (const { document, url } of page.certificates) {
      const render = () => steps.certificatePdf(document, attachment)
      const inputs = inputsOf(document, attachment, renderer)
      await write(join(folder, url), await (cache ? cache.paper(inputs, render) : render()))
    }
    progress?.(index + 1, site.lots.length)
  }
  await cache?.prune()
}

/** What the certificates of a lot carry: never more than customers may see. */
export const attachmentOf = ({ attachment = '' }: LotPage): Attachment => ({
  name: 'data.json',
  bytes: Buffer.from(attachment, 'utf8')
})

type Certificate = LotPage['certificates'][number]['document']

const inputsOf = (document: Certificate, { name, bytes }: Attachment, renderer: string) => [
  renderer,
  JSON.stringify(document),
  name,
  bytes
]

async function write(path: string, bytes: Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true })
  await writeFile(path, bytes)
}
