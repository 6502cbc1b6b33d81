/** The words a paper is set with, around what its document says; one of each language. */

import type { Answer } from '../list-types.ts'
import type { PdfSigner } from '../issued-paper.ts'
import type { Basis } from '../types.ts'
import type { TypicalText } from '../watch-types.ts'

export interface PaperWords {
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
  readonly tested: (day: string) => string
  readonly deviation: string
  readonly decidedBy: string
  readonly noMethod: string
  readonly external: string
  readonly earlier: string
  readonly notStated: string
  /** What stands for a verdict or a standing. */
  readonly verdicts: Readonly<Record<Answer['word'], string>>
  readonly bases: Readonly<Record<Basis, string>>
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
  /** The wording of statements as a frozen document names it. */
  readonly wording: (edition: string) => string
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
  /** Where a formula comes from, and by what method its readings were taken. */
  readonly sourceOf: (source: string, method: string | undefined) => string
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
