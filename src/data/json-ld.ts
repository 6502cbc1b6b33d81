/**
 * A lot's page for search engines and crawlers: JSON-LD in the words of schema.org.
 *
 * The page is a DigitalDocument about the lot. A producer's own certificate is no schema.org
 * Certification: that is a statement of an independent body. schema.org has no word for uncertainty
 * or limits, so both stand as named PropertyValues by the figure. Texts are in the page's language, as it
 * says; keys, days and numbers are the same in any.
 */

import { issuedPaths } from '../documents/certificate-page.ts'
import type { Catalogue } from '../documents/languages/catalogue.ts'
import { catalogues } from '../documents/languages/index.ts'
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

function lotNode(page: LotPage, { edition, producer, language }: SiteDocument): Node {
  const { document } = page
  const words = catalogues[language]
  // The workshop's own pages have no address that holds for others.
  const root = edition === 'public' && producer.site ? siteAddress(producer.site, '') : undefined
  const address = (url: string) => (root ?? upFrom(document.url)) + encodeURI(url)
  const maker = organization(producer)
  return {
    '@context': 'https://schema.org/',
    '@type': 'DigitalDocument',
    ...(root === undefined ? {} : { '@id': address(document.url), url: address(document.url) }),
    name: words.pages.lot.title(document.lot, document.kind),
    identifier: document.lot,
    inLanguage: language,
    creator: maker,
    encoding: [
      ...page.certificates.flatMap(paper => certificateNodes(paper, address, language)),
      media(words.described.figures, address(page.dataUrl), 'application/json')
    ],
    about: product(document, maker, address, words)
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
  more: { readonly sha256?: string | undefined; readonly inLanguage?: string } = {}
): Node => ({
  '@type': 'MediaObject',
  name,
  contentUrl,
  encodingFormat,
  ...more
})

/** A certificate keeps the language it was issued in, whatever the page's. */
function certificateNodes(
  { document, url, issued }: CertificatePaper,
  address: (url: string) => string,
  pageLanguage: SiteDocument['language']
): Node[] {
  const { title, number, mark, language } = document
  const name = [title, number, mark].filter(Boolean).join(', ')
  const spoken = language === pageLanguage ? {} : { inLanguage: language }
  const pdf = media(name, address(url), 'application/pdf', {
    sha256: issued?.pdfSha256,
    ...spoken
  })
  if (!issued) return [pdf]
  const said = catalogues[language].described.data(name)
  const { data } = issuedPaths(issued)
  return [pdf, media(said, address(data), 'application/json', { sha256: issued.sha256, ...spoken })]
}

function product(
  document: LotDocument,
  maker: Node,
  address: (url: string) => string,
  { described, pages }: Catalogue
): Node {
  const { grade, lot, kind, made, results } = document
  return {
    '@type': 'SomeProducts',
    name: grade ? described.product(grade.title, lot) : pages.lot.heading(lot),
    identifier: lot,
    category: kind,
    productionDate: made,
    manufacturer: maker,
    model: grade && {
      '@type': 'ProductModel',
      name: described.grade(grade.title, grade.revision),
      identifier: grade.id,
      url: address(grade.url)
    },
    additionalProperty: results
      .filter(({ value }) => value)
      .map(row => propertyValue(row, described))
  }
}

/** A figure; one below its reporting limit has no value, but a most. */
function propertyValue(row: ResultRow, words: Catalogue['described']): Node {
  const { key, title, basis, unit, value, below, expandedUncertainty, coverageFactor } = row
  const inUnit = { unitCode: unitCodes[unit.ucum], unitText: unit.ucum }
  const figure = Number(value?.exact)
  return {
    '@type': 'PropertyValue',
    propertyID: key,
    name: title,
    ...(basis === 'typical' ? { description: words.typical } : {}),
    ...(below ? { maxValue: figure } : { value: figure }),
    ...inUnit,
    measurementTechnique: techniqueOf(row, words),
    valueReference: [
      ...(expandedUncertainty
        ? [
            {
              '@type': 'PropertyValue',
              name: words.uncertainty(coverageFactor?.printed),
              value: Number(expandedUncertainty.exact),
              ...inUnit
            }
          ]
        : []),
      ...(row.limit ? [limitNode(row.limit, inUnit, words)] : [])
    ]
  }
}

const techniqueOf = ({ method }: ResultRow, words: Catalogue['described']) =>
  method && words.method(method.id, method.edition, method.title.replaceAll('\u00a0', ' '))

const limitNode = (
  { min, max, of }: LimitText,
  inUnit: Node,
  words: Catalogue['described']
): Node => ({
  '@type': 'PropertyValue',
  name: words.limit(of),
  ...(min ? { minValue: Number(min.exact) } : {}),
  ...(max ? { maxValue: Number(max.exact) } : {}),
  ...inUnit
})
