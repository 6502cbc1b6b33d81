/**
 * The shape of a frozen certificate: what an issued certificate says, once and for all.
 *
 * It mirrors `CertificateDocument`; the last lines here do not compile where the two part.
 */

import * as z from 'zod'
import { paperLanguages } from '../records/schemas/common.ts'
import type { Json } from '../register/canonical.ts'
import type { CertificateDocument } from './types.ts'

/** Raised when a field is added, changes its meaning or goes; older formats stay readable. */
export const CERTIFICATE_FORMAT_VERSION = 1

const text = z.string()
const texts = z.array(z.string()).readonly()
const optionalText = z.exactOptional(text)

const figure = z.strictObject({ exact: text, printed: text })
const optionalFigure = z.exactOptional(figure)
const unit = z.strictObject({ printed: text, ucum: text })
const verdictWord = z.enum([
  'pass',
  'fail',
  'conditional pass',
  'conditional fail',
  'not decidable'
])

const row = z.strictObject({
  key: text,
  title: text,
  meaning: text,
  basis: z.enum(['measured', 'typical', 'not measured']),
  unit,
  method: z.exactOptional(
    z.strictObject({
      id: text,
      edition: text,
      title: text,
      conditions: text,
      reference: optionalText,
      deviation: optionalText
    })
  ),
  testedOn: optionalText,
  n: z.exactOptional(z.number()),
  value: optionalFigure,
  below: z.exactOptional(z.boolean()),
  standardUncertainty: optionalFigure,
  expandedUncertainty: optionalFigure,
  coverageFactor: optionalFigure,
  degreesOfFreedom: optionalFigure,
  /** Of a result that comes without its readings. */
  report: z.exactOptional(
    z.strictObject({
      by: text,
      own: z.exactOptional(z.literal(true)),
      number: text,
      date: text,
      method: optionalText,
      scope: optionalText,
      sha256: optionalText,
      sentence: text
    })
  ),
  spread: optionalText,
  limit: z.exactOptional(
    z.strictObject({ min: optionalFigure, max: optionalFigure, printed: text, of: text })
  ),
  verdict: z.exactOptional(
    z.strictObject({ word: verdictWord, sentence: text, probability: optionalFigure })
  ),
  decidedBy: z.exactOptional(
    z.strictObject({
      place: text,
      count: z.number(),
      value: figure,
      expandedUncertainty: figure,
      printed: text
    })
  )
})

/** A pictogram as it was drawn: strokes, so that a later program draws the same. */
const pictogram = z.strictObject({
  code: text,
  title: text,
  parts: z.array(z.strictObject({ path: text, ink: z.enum(['black', 'white', 'red']) })).readonly()
})

const computedHazards = z.strictObject({
  sentence: text,
  state: z.enum(['complete', 'incomplete']),
  from: texts,
  classes: z.array(z.strictObject({ name: text, statement: text, why: texts })).readonly(),
  notes: texts,
  agreement: text,
  dust: optionalText
})

const statementTexts = z.array(z.strictObject({ code: text, text })).readonly()

/** The label of another edition. */
const hazardEdition = z.strictObject({
  title: text,
  classified: texts,
  pictograms: z.array(pictogram).readonly(),
  signal: optionalText,
  statements: statementTexts,
  sentence: text,
  edition: text
})

const hazards = z.strictObject({
  pictograms: z.array(pictogram).readonly(),
  signal: optionalText,
  statements: statementTexts,
  basis: text,
  edition: text,
  classified: texts,
  editions: z.exactOptional(z.array(hazardEdition).readonly()),
  computed: z.exactOptional(computedHazards),
  transport: text
})

export const certificateSchema = z.strictObject({
  title: text,
  lot: text,
  number: text,
  revision: text,
  issued: text,
  amends: optionalText,
  changes: z.exactOptional(texts),
  preview: z.literal(false),
  language: z.enum(paperLanguages),
  paper: z.enum(['A4', 'Letter']),
  dated: text,
  producer: z.strictObject({
    name: text,
    address: texts,
    email: text,
    telephone: text,
    site: optionalText
  }),
  facts: z.array(z.strictObject({ label: text, text })).readonly(),
  answer: z.strictObject({ word: z.enum([...verdictWord.options, 'not judged']), sentence: text }),
  results: z.array(row).readonly(),
  notMeasured: texts,
  decisionRule: text,
  release: z.strictObject({
    state: z.enum([
      'quarantine',
      'released',
      'rejected',
      'concession',
      'withdrawn',
      'scrapped',
      'in process'
    ]),
    sentence: text
  }),
  signatory: text,
  hazards: z.exactOptional(hazards),
  cautions: texts,
  traceability: texts,
  statements: texts,
  url: optionalText
})

/** A data file as it was given. */
export const carriedData = z.custom<Readonly<Record<string, Json>>>(
  value => typeof value === 'object' && value !== null && !Array.isArray(value)
)

export const frozenCertificateSchema = z.strictObject({
  format: z.literal('lotfolio-certificate'),
  formatVersion: z.literal(CERTIFICATE_FORMAT_VERSION),
  number: text,
  revision: z.number().int().positive(),
  /** Edition of the fixed words around the document: column titles, headings. */
  wording: z.number().int().positive(),
  certificate: certificateSchema,
  /** Whose X.509 certificate signs the PDF. */
  pdfSigner: z.exactOptional(
    z.strictObject({ name: text, issuer: text, serial: text, sha256: text })
  ),
  /** The lot's public figures on the day of issue, as its data file gave them; carried, not read. */
  data: carriedData
})

export type FrozenCertificate = z.output<typeof frozenCertificateSchema>

/** A certificate that was issued: it has a number, a signatory, and no mark across its pages. */
export type IssuedCertificate = FrozenCertificate['certificate']

/** Compiles only while whatever was frozen is a document that the renderers take. */
export const documentOf = (issued: IssuedCertificate): CertificateDocument => issued
