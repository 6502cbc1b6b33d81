/** The files beside the pages: each lot's data and certificates, and the register. */

import { mkdir, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { copiesFile, issuedPaths, registerFile } from '../documents/certificate-page.ts'
import { datasheetIn } from '../documents/grade.ts'
import { type IssuedRegister, noRegister } from '../documents/issued.ts'
import { LOT_DATA_VERSION, lotDataJsonSchema } from '../documents/lot-data.ts'
import { panelDataText } from '../documents/panel-data.ts'
import { saltsOf } from '../documents/sent-copies.ts'
import type { CertificatePaper, LotPage, SiteDocument } from '../documents/types.ts'
import { copyListText } from '../register/copy-list.ts'
import { publishedText } from '../register/published.ts'
import { carried } from '../verify/holding.ts'
import { sealFor } from './evidence.ts'
import { isMissing } from './failure.ts'
import { asIssued, type Otherwise } from './originals.ts'
import type { PaperCache } from './paper-cache.ts'
import { scriptFiles, scriptPaths } from './scripts.ts'
import { pictureBytes } from './read-pictures.ts'
import type { Seal, Steps } from './steps.ts'

/** Told after each lot how many are done, of how many. */
export type Progress = (done: number, total: number) => void

export interface PaperTools {
  readonly steps: Steps
  /** What was issued, for the proofs its papers carry; nothing by default. */
  readonly register?: () => IssuedRegister
  /** Folder of the records, where pictures are taken from. */
  readonly content?: string
  /** Folder of the papers as they were first drawn, if there is one. */
  readonly archive?: string
  /** Absent, every paper is rendered anew. */
  readonly cache?: PaperCache
  readonly progress?: Progress
  /** Told of each issued paper that did not come out as it was first drawn. */
  readonly otherwise?: (found: Otherwise) => void
}

/** Address of the schema every data file keeps to. */
const dataSchemaPath = `schemas/lot-data-${LOT_DATA_VERSION}.json`

/** The register and the list of copies as scripts, so that a page opened from disk may have them. */
const registerScript = 'register/published.js'
const copiesScript = 'register/copies.js'

const registerIn = ({ register = () => noRegister }: PaperTools) => register()

/** Addresses of the files that stand beside no lot's page. */
export const commonPaths = [
  dataSchemaPath,
  registerFile,
  registerScript,
  copiesFile,
  copiesScript,
  ...scriptPaths
]

/** Write the register, what reads it, and the schema of the data files into a site's folder. */
export async function writeCommon(folder: string, tools: PaperTools): Promise<void> {
  await write(folder, dataSchemaPath, `${JSON.stringify(lotDataJsonSchema(), null, 2)}\n`)
  const { log, tree, copies } = registerIn(tools)
  const published = await publishedText(log, tree)
  const list = await copyListText(copies.chain, saltsOf(copies), log)
  await write(folder, registerFile, published)
  await write(folder, registerScript, assigning('lotfolioRegister', published))
  await write(folder, copiesFile, list)
  await write(folder, copiesScript, assigning('lotfolioCopies', list))
  for (const { path, text } of await scriptFiles()) await write(folder, path, text)
}

const assigning = (name: string, text: string): string =>
  `globalThis.${name} = ${JSON.stringify(text)}\n`

/** Addresses of the files beside a lot's page, but for its statement of working: that has a language. */
export const paperPaths = ({
  dataUrl,
  certificates,
  labels = [],
  pictures = []
}: LotPage): string[] => [
  dataUrl,
  ...pictures.map(({ url }) => url),
  ...labels.map(({ url }) => url),
  ...certificates.flatMap(({ url, issued }) =>
    issued ? Object.values(issuedPaths(issued)) : [url]
  )
]

/** Writes the files beside one lot's page. */
export type PaperWriter = (page: LotPage) => Promise<void>

/** A writer of a site's papers into its folder. */
export async function paperWriter(
  site: SiteDocument,
  folder: string,
  tools: PaperTools
): Promise<PaperWriter> {
  const renderer = tools.cache ? await tools.steps.renderer() : ''
  return async page => {
    await write(folder, page.dataUrl, tools.steps.lotData(page, site))
    for (const { file, url } of page.pictures ?? [])
      await write(folder, url, await pictureBytes(tools.content ?? '', file))
    for (const paper of page.certificates)
      await writePaper(folder, { page, paper, renderer }, tools)
    for (const { url, document } of page.labels ?? [])
      await write(folder, url, await drawn(document, tools.steps.labelPdf, renderer, tools))
  }
}

/** Writes the statements of working of some lots; their paths. */
export type StatementWriter = (pages: readonly LotPage[]) => Promise<string[]>

/** A writer of statements into a site's folder, in whatever language a page has its own. */
export async function statementWriter(folder: string, tools: PaperTools): Promise<StatementWriter> {
  const renderer = tools.cache ? await tools.steps.renderer() : ''
  return async pages => {
    const papers = pages.flatMap(({ statement }) => statement ?? [])
    for (const { url, document } of papers)
      await write(folder, url, await drawn(document, tools.steps.statementPdf, renderer, tools))
    return papers.map(({ url }) => url)
  }
}

/** The PDF of a paper that the register knows nothing of: drawn, or kept from an earlier build. */
function drawn<Document>(
  document: Document,
  draw: (document: Document) => Uint8Array,
  renderer: string,
  { cache }: PaperTools
): Promise<Uint8Array> {
  const render = () => Promise.resolve(draw(document))
  return cache ? cache.paper([renderer, JSON.stringify(document)], render) : render()
}

/** Write the datasheet of each grade; their paths. */
export async function writeDatasheets(
  { grades }: SiteDocument,
  folder: string,
  tools: PaperTools
): Promise<string[]> {
  const { steps, cache } = tools
  const renderer = cache ? await steps.renderer() : ''
  for (const page of grades) {
    const bytes = await drawn(datasheetIn(page), steps.datasheetPdf, renderer, tools)
    await write(folder, page.datasheetUrl, bytes)
  }
  return grades.map(({ datasheetUrl }) => datasheetUrl)
}

/** Write the data of each panel; their paths. */
export async function writePanelData(
  { panelPages }: SiteDocument,
  folder: string
): Promise<string[]> {
  const pages = [...panelPages]
  for (const page of pages) await write(folder, page.dataUrl, panelDataText(page))
  return pages.map(({ dataUrl }) => dataUrl)
}

interface Task {
  readonly page: LotPage
  readonly paper: CertificatePaper
  readonly renderer: string
}

async function writePaper(folder: string, task: Task, tools: PaperTools): Promise<void> {
  const { page, paper } = task
  const { issued, url } = paper
  const seal = await sealFor(page, paper, registerIn(tools))
  const drawn = await drawnPaper(task, seal, tools)
  if (!issued) return write(folder, url, drawn)
  const served = await asIssued(issued, drawn, tools.archive ?? '')
  if (served.is !== 'as issued') tools.otherwise?.({ paper: issued, is: served.is })
  const paths = issuedPaths(issued)
  await write(folder, paths.pdf, served.bytes)
  await write(folder, paths.data, issued.text)
  const proof = seal.attachments.find(({ name }) => name === carried.proof)!
  await write(folder, paths.proof, proof.bytes)
}

/** The PDF of a certificate: rendered, or kept from an earlier build. */
function drawnPaper(
  { paper: { document }, renderer }: Task,
  seal: Seal,
  { steps, cache }: PaperTools
): Promise<Uint8Array> {
  const render = () => steps.certificatePdf(document, seal)
  const { fingerprint = '', attachments, pdfSignature } = seal
  const carried = attachments.flatMap(({ name, bytes }) => [name, bytes])
  const { signer, cms } = pdfSignature ?? {}
  const signature = signer && cms ? [JSON.stringify(signer), cms] : []
  const inputs = [renderer, JSON.stringify(document), fingerprint, ...signature, ...carried]
  return cache ? cache.paper(inputs, render) : render()
}

/** Nearly every file goes into a folder that is there: the page's. */
async function write(folder: string, path: string, content: string | Uint8Array): Promise<void> {
  const whole = join(folder, path)
  try {
    await writeFile(whole, content)
  } catch (error) {
    if (!isMissing(error)) throw error
    await mkdir(dirname(whole), { recursive: true })
    await writeFile(whole, content)
  }
}
