/** The words of the paper itself, by language; everything else comes worded in the document. */

import type { PdfSigner } from '../documents/issued-paper.ts'
import type { Basis, CertificateDocument } from '../documents/types.ts'
import type { TypicalText } from '../documents/watch-types.ts'

export interface Words {
  readonly certificate: string
  readonly lot: string
  readonly revision: string
  readonly issued: string
  readonly previewMark: string
  readonly noNumber: string
  readonly page: (n: number, of: number) => string
  readonly results: string
  readonly groups: Record<Basis, string>
  readonly continued: string
  readonly columns: {
    readonly unit: string
    readonly n: string
    readonly value: string
    readonly typical: string
    readonly uncertainty: string
    readonly limit: string
    readonly verdict: string
    readonly status: string
  }
  readonly columnNote: string
  readonly edition: string
  readonly tested: string
  readonly deviation: string
  readonly decidedBy: string
  readonly noMethod: string
  readonly external: string
  readonly earlier: string
  readonly notStated: string
  readonly noUnit: string
  readonly noLimit: string
  readonly notJudged: string
  readonly notCounted: string
  readonly alsoNotMeasured: string
  readonly decisionRule: string
  readonly release: string
  readonly signatory: string
  readonly hazards: string
  readonly noSignal: string
  readonly noStatement: string
  readonly wordingFrom: string
  readonly cautions: string
  readonly traceability: string
  readonly statements: string
  readonly changes: string
  readonly online: string
  readonly linkTo: string
  readonly check: string
  readonly checkText: string
  readonly checkCopyText: string
  readonly copyOf: string
  readonly fingerprint: string
  readonly qr: (url: string) => string
  readonly pdfSignature: string
  readonly signedBy: (signer: PdfSigner) => string
  readonly signatureField: (name: string) => string
  readonly shipment: string
  readonly sent: string
  readonly together: string
  readonly packFor: (shipment: string) => string
  readonly endOfList: string
  readonly endOfStatement: string
  readonly ofProcess: string
  readonly end: string
  readonly endOfPreview: string
  readonly datasheet: string
  readonly grade: string
  readonly asOf: string
  readonly validFrom: string
  readonly measuredOnEach: string
  readonly typicalOf: (confidence: string) => string
  readonly datasheetColumns: Readonly<
    Record<
      | 'property'
      | 'limit'
      | 'unit'
      | 'holdsFor'
      | 'method'
      | 'from'
      | 'to'
      | 'part'
      | 'lots'
      | 'made',
      string
    >
  >
  readonly made: (from: string) => string
  readonly revisionNamed: string
  readonly shapes: Readonly<Record<TypicalText['kind'], string>>
  readonly statedAsTypical: string
  readonly notMeasured: string
  readonly methods: string
  readonly declared: string
  readonly disclaimer: string
  readonly supply: string
  readonly revisions: string
  readonly gradeOnline: string
  readonly linkToGrade: string
  readonly endOfDatasheet: string
  readonly attachment: string
  /** What each file carried is for, by its name. */
  readonly attachments: Readonly<Record<string, string>>
}

const en: Words = {
  certificate: 'Certificate',
  lot: 'Lot',
  revision: 'revision',
  issued: 'Issued',
  previewMark: 'Preview, not issued',
  noNumber: 'No certificate number',
  page: (n, of) => `Page ${n} of ${of}`,
  results: 'Results',
  groups: {
    measured: 'Measured on this lot',
    typical: 'Typical of the grade, not measured on this lot',
    'not measured': 'Not measured on this lot'
  },
  continued: 'continued',
  columns: {
    unit: 'Unit',
    n: 'n',
    value: 'Result',
    typical: 'Typical',
    uncertainty: 'U',
    limit: 'Limit',
    verdict: 'Verdict',
    status: 'Status'
  },
  columnNote:
    'n: readings or sheets behind the result. U: expanded uncertainty of measurement, with its coverage factor k. <: the result is an upper bound.',
  edition: 'edition',
  tested: 'tested',
  deviation: 'Deviation from the method',
  decidedBy: 'Decided by',
  noMethod: 'Method not stated.',
  external: 'external',
  earlier: 'earlier record',
  notStated: 'not stated',
  noUnit: '–',
  noLimit: 'no limit',
  notJudged: 'not judged',
  notCounted: '–',
  alsoNotMeasured: 'Not measured',
  decisionRule: 'Decision rule',
  release: 'Release',
  signatory: 'Signatory',
  hazards: 'Hazards',
  noSignal: 'No signal word',
  noStatement: 'No hazard statement is declared.',
  wordingFrom: 'Wording of the statements',
  cautions: 'Cautions',
  traceability: 'Traceability',
  statements: 'Statements',
  changes: 'Changes since the last revision',
  online: 'This lot online',
  linkTo: 'Page of this lot',
  check: 'Check this copy',
  checkText:
    'The page below tells whether this certificate still stands. It shows the same fingerprint, and compares this file as a whole.',
  copyOf: 'Customer’s copy of certificate',
  checkCopyText:
    'The page below tells whether the certificate that this is a copy of still stands. It shows the same fingerprint, and compares this file as a whole.',
  fingerprint: 'Fingerprint',
  qr: url => `QR code of the address ${url}`,
  pdfSignature: 'PDF signature',
  signedBy: ({ name, issuer, serial }) =>
    `This file is signed for ${name}, with a certificate of the X.509 kind issued by ${issuer}, serial number ${serial}. Whether that certificate is to be trusted is for the program that shows this file to judge.`,
  signatureField: name => `Signature of this file for ${name}`,
  shipment: 'Shipment',
  sent: 'Sent',
  together: 'Together',
  packFor: shipment => `Papers for shipment ${shipment}`,
  endOfList: 'End of packing list',
  endOfStatement: 'End of statement',
  ofProcess: 'Private, of the process',
  end: 'End of certificate',
  endOfPreview: 'End of preview',
  datasheet: 'Datasheet',
  grade: 'Grade',
  asOf: 'as of',
  validFrom: 'valid from',
  measuredOnEach: 'Measured on each lot',
  typicalOf: confidence => `Typical of lots, with ${confidence} % confidence`,
  datasheetColumns: {
    property: 'Property',
    limit: 'Certified limit',
    unit: 'Unit',
    holdsFor: 'Holds for',
    method: 'Method',
    from: 'From',
    to: 'To',
    part: 'Of lots',
    lots: 'Lots',
    made: 'Made; shape of the scatter'
  },
  made: from => `Of lots made ${from}.`,
  revisionNamed: 'Revision',
  shapes: { normal: 'taken as normal', 'distribution-free': 'no shape assumed' },
  statedAsTypical: 'Stated as typical, not measured on each lot',
  notMeasured: 'Not measured',
  methods: 'Methods',
  declared: 'Declared, not tested on lots',
  disclaimer: 'What this rests on, and who decides',
  supply: 'Supply and storage',
  revisions: 'Revisions',
  gradeOnline: 'This grade online',
  linkToGrade: 'Page of this grade',
  endOfDatasheet: 'End of datasheet',
  attachment: 'Data of this document',
  attachments: {
    'data.json': 'Figures of the lot',
    'certificate.json': 'What this certificate says, as it was issued',
    'proof.json': 'Proof that it stands in the register',
    'copy.json': 'What this copy says, as it was sent'
  }
}

const words: Record<CertificateDocument['language'], Words> = { en }

/** The words of a language. */
export const wordsIn = (language: CertificateDocument['language']): Words => words[language]
