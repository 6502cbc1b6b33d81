/**
 * Rules of PDF/A-3a (ISO 19005-3:2012) and PDF/UA-1 (ISO 14289-1:2014) that a certificate could
 * break, in own words and from memory of the standards, not checked against the print. They are
 * no validator: each is here because leaving its duty out has to be noticed.
 */

import { type Dict, Objects, type Value } from './inspect.ts'
import { contentFaults } from './content-rules.ts'
import { structureFaults } from './structure-rules.ts'

/** Everything that breaks a rule, one sentence each. */
export function faultsOf(bytes: Uint8Array, files = 1, language = 'en'): string[] {
  const pdf = new Objects(bytes)
  return [
    ...fileFaults(bytes, pdf),
    ...metadataFaults(pdf),
    ...catalogFaults(pdf, language),
    ...fontFaults(pdf),
    ...attachmentsFaults(pdf, files),
    ...structureFaults(pdf),
    ...contentFaults(pdf)
  ]
}

type Check = readonly [holds: boolean, fault: string]

export const failed = (checks: readonly Check[]): string[] =>
  checks.filter(([holds]) => !holds).map(([, fault]) => fault)

function fileFaults(bytes: Uint8Array, { trailer }: Objects): string[] {
  const raw = Buffer.from(bytes).toString('latin1')
  const id = trailer['/ID'] as readonly Value[] | undefined
  return failed([
    [raw.startsWith('%PDF-1.7\n'), 'the header is not 1.7'],
    [
      id?.length === 2 && id[0] === id[1] && id[0] !== 'b:',
      'the trailer has no ID of equal halves'
    ],
    [!('/Encrypt' in trailer), 'the file is encrypted'],
    [!/[^\r\n]endstream/.test(raw), 'a stream does not end on a line of its own']
  ])
}

const xmpValue = (xmp: string, name: string): string | undefined =>
  new RegExp(`<${name}>([^]*?)</${name}>`)
    .exec(xmp)?.[1]
    ?.replace(/<[^>]*>/g, '')
    .trim()

const plain = (xml: string | undefined): string | undefined =>
  xml?.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&')

function metadataFaults(pdf: Objects): string[] {
  const reference = pdf.catalog['/Metadata']
  const xmp = pdf.content(reference).toString('utf8')
  const info = pdf.dict(pdf.trailer['/Info'])
  const date = (name: string) => xmpValue(xmp, name)?.replace(/[-:T]/g, '')
  const infoText = (key: string) => pdf.text(info[key])
  return failed([
    [!('/Filter' in pdf.dict(reference)), 'the metadata is compressed'],
    [isWellFormed(xmp), 'the metadata is not well-formed XML'],
    [xmpValue(xmp, 'pdfaid:part') === '3', 'the metadata does not claim PDF/A-3'],
    [xmpValue(xmp, 'pdfaid:conformance') === 'A', 'the metadata does not claim level A'],
    [xmpValue(xmp, 'pdfuaid:part') === '1', 'the metadata does not claim PDF/UA-1'],
    [xmp.includes('<pdfaSchema:prefix>pdfuaid<'), 'the PDF/UA field is not described'],
    [plain(xmpValue(xmp, 'dc:title')) === infoText('/Title'), 'the titles differ'],
    [plain(xmpValue(xmp, 'dc:creator')) === infoText('/Author'), 'the authors differ'],
    [plain(xmpValue(xmp, 'dc:description')) === infoText('/Subject'), 'the subjects differ'],
    [`D:${date('xmp:CreateDate')}` === infoText('/CreationDate'), 'the creation dates differ'],
    [`D:${date('xmp:ModifyDate')}` === infoText('/ModDate'), 'the dates of change differ']
  ])
}

/** Tags nest, and no '<' or '&' stands for itself: enough to notice a text that is not escaped. */
function isWellFormed(xml: string): boolean {
  const open: string[] = []
  let nested = true
  const texts = xml
    .replace(/<\?[^]*?\?>/g, '')
    .replace(/<(\/?)([\w:]+)([^<>]*?)(\/?)>/g, (_, closing: string, name: string, _a, empty) => {
      if (closing) nested &&= open.pop() === name
      else if (!empty) open.push(name)
      return ''
    })
  return nested && open.length === 0 && !/<|>|&(?!(amp|lt|gt|quot|apos);)/.test(texts)
}

function catalogFaults(pdf: Objects, language: string): string[] {
  const { catalog } = pdf
  const intent = pdf.dict(pdf.list(catalog['/OutputIntents'])[0])
  const profile = pdf.content(intent['/DestOutputProfile']).toString('latin1')
  return failed([
    [pdf.text(catalog['/Lang']) === language, 'the language is not stated'],
    [pdf.dict(catalog['/MarkInfo'])['/Marked'] === true, 'the file is not marked as tagged'],
    [
      pdf.dict(catalog['/ViewerPreferences'])['/DisplayDocTitle'] === true,
      'the title is not shown in place of the file name'
    ],
    [intent['/S'] === '/GTS_PDFA1', 'there is no output intent'],
    [profile.slice(36, 40) === 'acsp', 'the output intent has no colour profile'],
    [pdf.pages.every(page => page['/Tabs'] === '/S'), 'tabs do not follow the structure']
  ])
}

function fontFaults(pdf: Objects): string[] {
  const fonts = pdf.all.filter(dict => dict['/Type'] === '/Font')
  const composite = fonts.filter(font => font['/Subtype'] === '/Type0')
  const embedded = (font: Dict) =>
    '/FontFile2' in pdf.dict(pdf.dict(pdf.list(font['/DescendantFonts'])[0])['/FontDescriptor'])
  const kinds = new Set(fonts.map(font => font['/Subtype']))
  return failed([
    [composite.length > 0, 'there is no font'],
    [composite.every(embedded), 'a font is not embedded'],
    [
      composite.every(font => pdf.content(font['/ToUnicode']).length > 0),
      'a font has no ToUnicode'
    ],
    [[...kinds].every(kind => kind === '/Type0' || kind === '/CIDFontType2'), 'a font is simple']
  ])
}

function attachmentsFaults(pdf: Objects, files: number): string[] {
  const associated = pdf.list(pdf.catalog['/AF'])
  return [
    ...failed([[associated.length === files, 'an attachment is not associated with the document']]),
    ...associated.flatMap(reference => attachmentFaults(pdf, reference))
  ]
}

function attachmentFaults(pdf: Objects, reference: Value): string[] {
  const file = pdf.dict(reference)
  const stream = pdf.dict(pdf.dict(file['/EF'])['/F'])
  const named = pdf.list(pdf.dict(pdf.dict(pdf.catalog['/Names'])['/EmbeddedFiles'])['/Names'])
  return failed([
    [file['/AFRelationship'] === '/Data', 'the attachment does not say it is the data'],
    [pdf.text(file['/F']) !== undefined, 'the attachment has no name'],
    [pdf.text(file['/F']) === pdf.text(file['/UF']), 'the names of the attachment differ'],
    [stream['/Subtype'] === '/application/json', 'the attachment has no media type'],
    [pdf.text(pdf.dict(stream['/Params'])['/ModDate']) !== undefined, 'the attachment has no date'],
    [named.includes(reference), 'the attachment is not listed by name']
  ])
}
