/** Pieces of HTML with every text escaped. */

import { escaped } from '../markup.ts'

/** HTML that is safe to put into a page. */
export interface Html {
  readonly html: string
}

type Piece = Html | string | number | false | undefined | readonly Piece[]

const safe = (piece: Piece): string => {
  if (piece === false || piece === undefined) return ''
  if (typeof piece === 'string' || typeof piece === 'number') return escaped(String(piece))
  return isHtml(piece) ? piece.html : piece.map(safe).join('')
}

const isHtml = (piece: Html | readonly Piece[]): piece is Html => 'html' in piece

/** A template literal as HTML: what is put in is a text, unless it is HTML itself; false is nothing. */
export const html = (texts: TemplateStringsArray, ...pieces: readonly Piece[]): Html => ({
  html: texts.reduce((sofar, text, index) => sofar + safe(pieces[index - 1]) + text)
})
