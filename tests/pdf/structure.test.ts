import { beforeAll, describe, expect, it } from 'vitest'
import { archivalTwin, certificatePdf } from '../../src/pdf/certificate.ts'
import { certificateDocument, previewDocument } from '../fixtures/documents.ts'
import { requireTool } from '../tools.ts'
import { thorough } from '../thorough.ts'
import { attachedBytes, Objects, preflightAll, preflightJars, run, withFile } from './inspect.ts'
import { faultsOf } from './rules.ts'
import { attachment, longDocument, sealed } from './samples.ts'

const correctedDocument = {
  ...certificateDocument,
  revision: '2',
  changes: ['Ash: 0.52 % instead of 0.54 %', 'Reason: a crucible was read twice']
}

const samples = [
  ['correction', correctedDocument],
  ['certificate', certificateDocument],
  ['preview', previewDocument],
  ['certificate of forty properties', longDocument],
  ['Letter certificate', { ...longDocument, paper: 'Letter' as const }]
] as const

describe.skipIf(!requireTool('qpdf', 'qpdf'))('the structure', () => {
  it.each(samples)('a %s keeps the rules of PDF/A-3a and PDF/UA-1', async (_, document) => {
    expect(faultsOf(await certificatePdf(document, attachment))).toEqual([])
  })

  it.each(samples)('a %s is a sound file', async (_, document) => {
    const bytes = await certificatePdf(document, attachment)
    expect(withFile(bytes, path => run('qpdf', ['--check', path]))).toContain(
      'No syntax or stream encoding errors found'
    )
  })

  it.each([
    ['sealed certificate', certificateDocument],
    ['sealed correction', correctedDocument]
  ])('a %s with its three files keeps the rules', async (_, document) => {
    expect(faultsOf(await certificatePdf(document, sealed), 3)).toEqual([])
  })

  it('carries names with & and < in title and metadata as they are', async () => {
    const title = 'Certificate of <analysis> & more'
    const pdf = new Objects(await certificatePdf({ ...certificateDocument, title }, attachment))
    const info = pdf.dict(pdf.trailer['/Info'])
    const xmp = pdf.content(pdf.catalog['/Metadata']).toString('utf8')
    expect(pdf.text(info['/Author'])).toBe('Tarnfell Flake & Foil <Workshop>')
    expect(xmp).toContain('<rdf:li>Tarnfell Flake &amp; Foil &lt;Workshop&gt;</rdf:li>')
    expect(xmp).toContain('>Certificate of &lt;analysis&gt; &amp; more, C-26-014, revision 1<')
  })

  it('dates the file to noon of its day', async () => {
    const pdf = new Objects(await certificatePdf(certificateDocument, attachment))
    const info = pdf.dict(pdf.trailer['/Info'])
    expect(pdf.text(info['/CreationDate'])).toBe('D:20260319120000Z')
    expect(pdf.text(info['/ModDate'])).toBe('D:20260319120000Z')
  })

  it('leads from the printed address to the lot', async () => {
    const pdf = new Objects(await certificatePdf(certificateDocument, attachment))
    const [link] = pdf.list(pdf.pages.at(-1)!['/Annots'])
    const { url } = certificateDocument
    expect(pdf.text(pdf.dict(pdf.dict(link)['/A'])['/URI'])).toBe(url)
    expect(pdf.text(pdf.dict(link)['/Contents'])).toBe(`Page of this lot: ${url}`)
  })
})

describe.skipIf(!requireTool('pdfinfo', 'poppler-utils'))('as poppler sees it', () => {
  it('is tagged, and of the paper asked for', async () => {
    const letter = { ...certificateDocument, paper: 'Letter' as const }
    const info = withFile(await certificatePdf(letter, attachment), path => run('pdfinfo', [path]))
    expect(info).toMatch(/Tagged: +yes/)
    expect(info).toMatch(/Page size: +612 x 792 pts \(letter\)/)
    expect(info).toMatch(/PDF version: +1\.7/)
  })

  it('embeds both faces with their signs named', async () => {
    const bytes = await certificatePdf(certificateDocument, attachment)
    const fonts = withFile(bytes, path => run('pdffonts', [path]))
      .split('\n')
      .slice(2, -1)
    expect(fonts).toHaveLength(2)
    for (const font of fonts)
      expect(font).toMatch(/Inter-\w+ +CID TrueType +Identity-H +yes yes yes/)
  })

  it('gives back the attached bytes', async () => {
    const bytes = attachedBytes(await certificatePdf(certificateDocument, attachment))
    expect(Buffer.from(bytes).equals(Buffer.from(attachment.attachments[0]!.bytes))).toBe(true)
  })

  it('keeps the texts of a cell apart when read aloud', async () => {
    // Poppler goes through a whole page again for each text: a short one does on a desk.
    const { results, hazards: _, ...rest } = certificateDocument
    const short = {
      ...rest,
      results: results.slice(0, 1),
      facts: [],
      traceability: [],
      statements: []
    }
    const bytes = await certificatePdf(thorough ? certificateDocument : short, attachment)
    const read = withFile(bytes, path => run('pdfinfo', ['-struct-text', path]))
    expect(read).toMatch(/TD\s+P \(block\)\s+"± 4\.3"\s+P \(block\)\s+"k = 2\.04"/)
    expect(read).toContain('extraction and eye protection')
  })
})

const canValidate = [requireTool('java', 'default-jre-headless')]
  .concat(preflightJars.map(([jar, debianPackage]) => requireTool(jar, debianPackage)))
  .every(found => found)

describe.skipIf(!canValidate)('the same pages as PDF/A-1b', () => {
  /** What Preflight says, by document; asked for all at once. */
  let said: Map<string, string>
  const attached = 'with its attachment'

  beforeAll(async () => {
    const twins = samples.map(async ([name, document]) => [name, await archivalTwin(document)])
    const files = new Map((await Promise.all(twins)) as [string, Uint8Array][])
    files.set(attached, await certificatePdf(certificateDocument, attachment))
    const verdicts = preflightAll([...files.values()])
    said = new Map([...files.keys()].map((name, index) => [name, verdicts[index]!]))
  })

  it.each(samples)('a %s passes PDFBox Preflight', name => {
    expect(said.get(name)).toBe('is a valid PDF/A-1b file')
  })

  it('are refused by Preflight where they are not: the attachment is no part of PDF/A-1', () => {
    expect(said.get(attached)).toContain('is not a valid PDF/A-1b file')
  })
})
