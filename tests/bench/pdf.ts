/**
 * A certificate against the same words drawn plainly by PDFKit: untagged, without an attachment, once
 * with built-in fonts and once with ours embedded.
 */

import { createRequire } from 'node:module'
import { create, type Font } from 'fontkit'
import { readFileSync } from 'node:fs'
import PDFDocument from 'pdfkit'
import type { CertificateDocument, LotPage } from '../../src/documents/types.ts'
import { certificatePdf } from '../../src/pdf/certificate.ts'
import { buildDocuments } from '../../src/pipeline.ts'
import { generateWorkshop } from './generate.ts'
import { reportRatio, timeSides } from './measure.ts'

/** Certificates of one round; the ratio does not depend on it. */
const MOST = 100

export async function benchPdf(lots: number): Promise<string> {
  const { site } = buildDocuments(generateWorkshop(Math.min(lots, MOST)), { edition: 'public' })
  const pages = site!.lots
  const regular = fontFile('400Regular/Inter_400Regular.ttf')
  const timings = await timeSides([
    { name: 'certificate: tagged, PDF/A-3, data attached', run: () => each(pages, ours) },
    {
      name: 'same words, embedded font, untagged',
      run: () => each(pages, page => plain(page, regular))
    },
    { name: 'same words, built-in font, untagged', run: () => each(pages, page => plain(page)) }
  ])
  const [full, embedded] = timings
  const ratio = full!.median_ms / embedded!.median_ms
  return [
    reportRatio(`Certificates, ${pages.length} of them`, timings, 3.3),
    `  over the embedded font: ${ratio.toFixed(2)} × (target ≤ 1.8: ${ratio <= 1.8 ? 'met' : 'missed'})`,
    `  one certificate: ${(full!.median_ms / pages.length).toFixed(1)} ms`
  ].join('\n')
}

async function each(pages: readonly LotPage[], draw: (page: LotPage) => Promise<unknown>) {
  for (const page of pages) await draw(page)
}

const ours = ({ certificates, attachment }: LotPage) =>
  certificatePdf(certificates[0]!.document, {
    attachments: [{ name: 'data.json', bytes: Buffer.from(attachment!, 'utf8') }]
  })

function fontFile(path: string): Font {
  const file = createRequire(import.meta.url).resolve(`@expo-google-fonts/inter/${path}`)
  return create(readFileSync(file)) as Font
}

/** Every text of a certificate, line by line, down the page. */
function plain({ certificates }: LotPage, font?: Font): Promise<Buffer> {
  const { document } = certificates[0]!
  const pdf = new PDFDocument({ size: 'A4', margin: 48 })
  const done = new Promise<Buffer>(resolve => {
    const chunks: Buffer[] = []
    pdf.on('data', (chunk: Buffer) => chunks.push(chunk))
    pdf.on('end', () => resolve(Buffer.concat(chunks)))
  })
  if (font) pdf.font(font as unknown as Buffer)
  for (const text of textsOf(document)) pdf.fontSize(8).text(font ? text : latin(text))
  pdf.end()
  return done
}

/** Built-in fonts hold Latin signs only. */
const latin = (text: string) => text.replace(/[^\u0020-\u00ff]/gu, 'x')

function textsOf(document: CertificateDocument): string[] {
  const rows = document.results.flatMap(row => [
    row.title,
    row.unit.printed,
    String(row.n ?? ''),
    row.value?.printed ?? '',
    row.expandedUncertainty?.printed ?? '',
    row.coverageFactor?.printed ?? '',
    row.limit?.printed ?? '',
    row.verdict?.word ?? '',
    [row.method?.id, row.method?.title, row.method?.conditions].filter(Boolean).join(', ')
  ])
  return [
    document.producer.name,
    ...document.producer.address,
    document.title,
    ...document.facts.flatMap(({ label, text }) => [label, text]),
    document.answer.sentence,
    ...rows,
    document.decisionRule,
    document.release.sentence,
    ...(document.hazards?.statements ?? []).flatMap(({ code, text }) => [code, text]),
    ...document.cautions,
    ...document.traceability,
    ...document.statements
  ].filter(text => text !== '')
}
