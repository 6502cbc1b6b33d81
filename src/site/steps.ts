/** What turns records into documents and documents into files: the rest of the program, as site/ sees it. */

import { join } from 'node:path'
import { type Feeds, feeds } from '../data/feeds.ts'
import { jsonLdText } from '../data/json-ld.ts'
import { lotData } from '../data/lot-data.ts'
import type { Datasheet } from '../documents/grade-types.ts'
import type { PdfSigner } from '../documents/issued-paper.ts'
import type { LabelDocument } from '../documents/label-types.ts'
import type { StatementDocument } from '../documents/statement-types.ts'
import type { CertificateDocument, LotPage, SiteDocument } from '../documents/types.ts'
import { filtersOf } from '../html/filters.ts'
import { wordsFor } from '../html/words.ts'
import { certificatePdf } from '../pdf/certificate.ts'
import { datasheetPdf } from '../pdf/datasheet.ts'
import { labelPdf } from '../pdf/label.ts'
import { statementPdf } from '../pdf/statement.ts'
import { buildDocuments, type SiteOptions, type SiteResult } from '../pipeline.ts'
import type { SourceFile } from '../problem.ts'
import { codePrint } from './code-print.ts'
import { projectFolder } from './project.ts'
import { styleHash } from './style-hash.ts'
import type { TemplateTools } from './templates.ts'

/** A file carried inside a PDF. */
export interface Attachment {
  readonly name: string
  readonly bytes: Uint8Array
}

/** What ties a paper to the register: the files it carries, and the fingerprint printed on it. */
export interface Seal {
  readonly attachments: readonly Attachment[]
  /** SHA-256 of what an issued certificate says; absent on a preview. */
  readonly fingerprint?: string
  /** Whose X.509 certificate signs the PDF, and the signature once it is made. */
  readonly pdfSignature?: { readonly signer: PdfSigner; readonly cms?: Uint8Array }
}

export interface Steps {
  readonly buildDocuments: (files: readonly SourceFile[], options: SiteOptions) => SiteResult
  readonly certificatePdf: (document: CertificateDocument, seal: Seal) => Promise<Uint8Array>
  readonly statementPdf: (document: StatementDocument) => Uint8Array
  readonly labelPdf: (document: LabelDocument) => Uint8Array
  readonly datasheetPdf: (document: Datasheet) => Uint8Array
  readonly lotData: (page: LotPage, site: SiteDocument) => string
  /** Table, feed and sitemap. */
  readonly feeds: Feeds
  /** What the templates use, in the language of a site. */
  readonly templateTools: (site: SiteDocument) => TemplateTools
  /** Changes whenever the same certificate might come out in other bytes. */
  readonly renderer: () => Promise<string>
}

const toolsIn = new Map<string, TemplateTools>()

/** The tools of a site's language and folder, always the same ones. */
function templateTools(site: SiteDocument): TemplateTools {
  const key = `${site.language} ${site.folder}`
  const tools = toolsIn.get(key) ?? {
    filters: { ...filtersOf(site), jsonLd: jsonLdText, styleHash },
    words: wordsFor(site)
  }
  toolsIn.set(key, tools)
  return tools
}

/** Folders whose code decides on a PDF's bytes. */
const rendererFolders = ['documents', 'figures', 'pdf']

const renderer = (): Promise<string> =>
  codePrint(rendererFolders.map(folder => join(projectFolder, 'src', folder)))

/** The program's own steps. */
export const steps: Steps = {
  buildDocuments,
  certificatePdf,
  labelPdf,
  datasheetPdf,
  statementPdf,
  lotData,
  feeds,
  templateTools,
  renderer
}
