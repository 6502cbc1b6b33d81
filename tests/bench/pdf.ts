/**
 * A certificate against the same drawing in a plain file of PDFKit: the same words at the same
 * places, in the same sizes and colours, with the same lines, marks and pages, by the same calls.
 *
 * The plain file has none of what makes a certificate one: tags, PDF/A metadata, colour profile,
 * attached data. It is drawn twice: with built-in fonts, and with ours embedded, which then find
 * the words already shaped that ours do. It is told where lines break and columns stand; PDFKit
 * measures each line it draws, and that stands for working it out.
 */

import PDFDocument from 'pdfkit'
import type { LotPage } from '../../src/documents/types.ts'
import { certificatePdf } from '../../src/pdf/certificate.ts'
import { fontOf } from '../../src/pdf/fonts.ts'
import { type Pdf, PdfFile } from '../../src/pdf/pdfkit.ts'
import { openFaces } from '../../src/pdf/text.ts'
import { buildDocuments } from '../../src/pipeline.ts'
import { generateWorkshop } from './generate.ts'
import { median, ratioOf, reportRatio, timeSides, verdictOn } from './measure.ts'

/** Certificates of one round; the ratio does not depend on it. */
const MOST = 100

export async function benchPdf(lots: number): Promise<string> {
  const { site } = buildDocuments(generateWorkshop(Math.min(lots, MOST)), { edition: 'public' })
  // A lot's page is made whenever it is read: held, that is no part of a certificate's time.
  const pages = site!.lots.map(page => ({ ...page }))
  const drawings: Drawing[] = []
  for (const page of pages) drawings.push(await recordCertificate(page))
  const timings = await timeSides([
    { name: 'certificate: tagged, PDF/A-3, data attached', run: () => each(pages, certificate) },
    { name: 'same drawing, fonts embedded, untagged', run: () => each(drawings, drawEmbedded) },
    { name: 'same drawing, built-in fonts, untagged', run: () => each(drawings, drawBuiltIn) }
  ])
  const [full, embedded] = timings
  const ratio = ratioOf(full!, embedded!)
  return [
    reportRatio(`Certificates, ${pages.length} of them`, timings, 3.3),
    `  over the embedded fonts: ${ratio.toFixed(2)} × ${verdictOn(ratio, 1.8)}`,
    `  one certificate: ${(median(full!.processor_ms) / pages.length).toFixed(1)} ms`
  ].join('\n')
}

async function each<Item>(items: readonly Item[], draw: (item: Item) => Promise<unknown>) {
  for (const item of items) await draw(item)
}

const certificate = ({ certificates, attachment }: LotPage) =>
  certificatePdf(certificates[0]!.document, {
    attachments: [{ name: 'data.json', bytes: Buffer.from(attachment!, 'utf8') }]
  })

/** Every call that leaves something to see. */
const seen = [
  ...['addPage', 'switchToPage', 'font', 'fontSize', 'text', 'fillColor', 'strokeColor'],
  ...['lineWidth', 'lineCap', 'moveTo', 'lineTo', 'rect', 'circle', 'path', 'fill', 'stroke'],
  ...['save', 'restore', 'translate', 'scale']
]

interface Call {
  readonly name: string
  readonly args: readonly unknown[]
}

type Drawing = readonly Call[]

type Methods = Record<string, (...args: readonly unknown[]) => unknown>

/** What a certificate asks of PDFKit; calls that PDFKit makes to itself are its own affair. */
async function recordCertificate(page: LotPage): Promise<Drawing> {
  const calls: Call[] = []
  const own = Object.getPrototypeOf(PdfFile.prototype) as Methods
  let depth = 0
  const record = (name: string) =>
    function (this: unknown, ...args: readonly unknown[]): unknown {
      if (depth === 0) calls.push({ name, args })
      depth += 1
      const result = own[name]!.apply(this, [...args])
      depth -= 1
      return result
    }
  for (const name of seen)
    Object.defineProperty(PdfFile.prototype, name, { configurable: true, value: record(name) })
  await certificate(page)
  for (const name of seen) Reflect.deleteProperty(PdfFile.prototype, name)
  return calls
}

const builtIn = { regular: 'Helvetica', semibold: 'Helvetica-Bold' }

const embedded = {
  regular: fontOf('regular').postscriptName,
  semibold: fontOf('semibold').postscriptName
}

function drawBuiltIn(drawing: Drawing): Promise<Buffer> {
  const pdf = new PDFDocument({ autoFirstPage: false, bufferPages: true })
  return replay(pdf, drawing, builtIn, latin)
}

function drawEmbedded(drawing: Drawing): Promise<Buffer> {
  const font = fontOf('regular') as unknown as string
  const pdf = new PDFDocument({ autoFirstPage: false, bufferPages: true, font })
  openFaces(pdf as unknown as Pdf)
  return replay(pdf, drawing, embedded, text => text)
}

/** Built-in fonts hold Latin signs only. */
const latin = (text: string) => text.replace(/[^\u0020-\u00ff]/gu, 'x')

const line = { lineBreak: false, baseline: 'alphabetic' } as const

function replay(
  pdf: PDFKit.PDFDocument,
  drawing: Drawing,
  names: typeof builtIn,
  spell: (text: string) => string
): Promise<Buffer> {
  const done = collect(pdf)
  for (const { name, args } of drawing)
    if (name === 'font') pdf.font(args[0] === embedded.semibold ? names.semibold : names.regular)
    else if (name === 'text')
      pdf.text(spell(String(args[0])), Number(args[1]), Number(args[2]), line)
    else (pdf as unknown as Methods)[name]!(...args)
  pdf.end()
  return done
}

function collect(pdf: PDFKit.PDFDocument): Promise<Buffer> {
  return new Promise(resolve => {
    const chunks: Buffer[] = []
    pdf.on('data', (chunk: Buffer) => chunks.push(chunk))
    pdf.on('end', () => resolve(Buffer.concat(chunks)))
  })
}
