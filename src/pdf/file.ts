/** A file to draw papers into: PDF/A-3a, tagged, in the faces of the papers. */

import { fontOf } from './fonts.ts'
import { PdfFile, type Subset } from './pdfkit.ts'
import { openFaces } from './text.ts'

/** What a file says of itself. */
export interface Paper {
  readonly title: string
  readonly author: string
  readonly subject: string
  readonly language: string
  /** Day it stands for, YYYY-MM-DD. */
  readonly dated: string
}

/** Noon in UTC of a day. */
export const noonOf = (day: string): Date => new Date(`${day}T12:00:00Z`)

/** An empty file. */
export function openFile(paper: Paper, subset: Subset = 'PDF/A-3a'): PdfFile {
  const pdf = new PdfFile({
    pdfVersion: subset === 'PDF/A-1b' ? '1.4' : '1.7',
    subset,
    tagged: true,
    lang: paper.language,
    displayTitle: true,
    info: {
      Title: paper.title,
      Author: paper.author,
      Subject: paper.subject,
      Creator: 'Lotfolio',
      Producer: 'PDFKit',
      CreationDate: noonOf(paper.dated),
      ModDate: noonOf(paper.dated)
    },
    font: fontOf('regular'),
    autoFirstPage: false,
    bufferPages: true
  })
  openFaces(pdf)
  return pdf
}
