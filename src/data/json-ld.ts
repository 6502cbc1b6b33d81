/**
 * A lot's page for search engines and crawlers: JSON-LD in the words of schema.org.
 *
 * The page is a DigitalDocument about the lot. A producer's own certificate is no schema.org
 * Certification: that is a statement of an independent body. schema.org has no word for uncertainty
 * or limits, so both stand as named PropertyValues by the figure.
 */

import { issuedPaths } from '../documents/certificate-page.ts'
import type {
  CertificatePaper,
  LimitText,
  LotDocument,
  LotPage,
  ProducerText,
  ResultRow,
  SiteDocument
} from '../documents/types.ts'
import { unitCodes } from './unit-codes.ts'
import { siteAddress } from '../documents/site-address.ts'

/** Absent members are left out. */
type Node = Readonly<Record<string, unknown>>

/** The block's text, safe inside a script element: no '<' is left in it. */
export const jsonLdText = (page: LotPage, site: SiteDocument): string =>
  JSON.stringify(lotNode(page, site)).replaceAll('<', '\\u003c')

function lotNode(page: LotPage, { edition, producer }: SiteDocument): Node {
  const { document } = page
  // The workshop's own pages have no address that holds for others.
  const root = edition === 'public' && producer.site ? siteAddress(producer.site, '') : undefined
  const address = (url: string) => (root ?? upFrom(document.url)) + encodeURI(url)
  const maker = organization(producer)
  return {
    '@context': 'https://schema.org/',
    '@type': 'DigitalDocument',
    ...(root === undefined ? {} : { '@id': address(document.url), url: address(document.url) }),
    name: `Lot ${document.lot}, ${document.kind}`,
    identifier: document.lot,
    inLanguage: 'en',
    creator: maker,
    encoding: [
      ...page.certificates.flatMap(paper => certificateNodes(paper, address)),
      media('Figures for programs', address(page.dataUrl), 'application/json')
    ],
    about: product(document, maker, address)
  }
}

/** '../../' for a page two folders below the site's root. */
const upFrom = (url: string) => '../'.repeat(url.split('/').length - 1)

const organization = ({ name, email, telephone, site }: ProducerText): Node => ({
  '@type': 'Organization',
  name,
  email,
  telephone,
  url: site
})

const media = (
  name: string,
  contentUrl: string,
  encodingFormat: string,
  sha256?: string
): Node => ({
  '@type': 'MediaObject',
  name,
  contentUrl,
  encodingFormat,
  sha256
})

function certificateNodes(
  { document, url, issued }: CertificatePaper,
  address: (url: string) => string
): Node[] {
  const name = [document.title, document.number, document.mark].filter(Boolean).join(', ')
  const pdf = media(name, address(url), 'application/pdf', issued?.pdfSha256)
  if (!issued) return [pdf]
  const { data } = issuedPaths(issued)
  return [pdf, media(`${name}, what it says`, address(data), 'application/json', issued.sha256)]
}

function product(document: LotDocument, maker: Node, address: (url: string) => string): Node {
  const { grade } = document
  return {
    '@type': 'SomeProducts',
    name: grade ? `${grade.title}, lot ${document.lot}` : `Lot ${document.lot}`,
    identifier: document.lot,
    category: document.kind,
    productionDate: document.made,
    manufacturer: maker,
    model: grade && {
      '@type': 'ProductModel',
      name: `${grade.title}, revision ${grade.revision}`,
      identifier: grade.id,
      url: address(grade.url)
    },
    additionalProperty: document.results.filter(({ value }) => value).map(propertyValue)
  }
}

/** A figure; one below its reporting limit has no value, but a most. */
function propertyValue(row: ResultRow): Node {
  const { key, title, basis, unit, value, below, expandedUncertainty, coverageFactor } = row
  const inUnit = { unitCode: unitCodes[unit.ucum], unitText: unit.ucum }
  const figure = Number(value?.exact)
  return {
    '@type': 'PropertyValue',
    propertyID: key,
    name: title,
    ...(basis === 'typical'
      ? { description: 'typical of the grade, not measured on this lot' }
      : {}),
    ...(below ? { maxValue: figure } : { value: figure }),
    ...inUnit,
    measurementTechnique: techniqueOf(row),
    valueReference: [
      ...(expandedUncertainty
        ? [
            {
              '@type': 'PropertyValue',
              name: `expanded uncertainty U${coverageFactor ? `, k = ${coverageFactor.printed}` : ''}`,
              value: Number(expandedUncertainty.exact),
              ...inUnit
            }
          ]
        : []),
      ...(row.limit ? [limitNode(row.limit, inUnit)] : [])
    ]
  }
}

const techniqueOf = ({ method }: ResultRow) =>
  method && `${method.id}, edition ${method.edition}: ${method.title.replaceAll('\u00a0', ' ')}`

const limitNode = ({ min, max, of }: LimitText, inUnit: Node): Node => ({
  '@type': 'PropertyValue',
  name: `limit for ${of}`,
  ...(min ? { minValue: Number(min.exact) } : {}),
  ...(max ? { maxValue: Number(max.exact) } : {}),
  ...inUnit
})
