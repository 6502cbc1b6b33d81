/**
 * Columns of figures with their decimal points in one line.
 *
 * Cells are set flush right. Whatever a figure lacks behind its point compared with its column is
 * filled with invisible signs of the same width, drawn by the style sheet: the figure itself stays
 * one piece of text, for reading aloud, copying, and pages shown without styles.
 */

/** What a column's cells need room for behind the point. */
export interface ColumnShape {
  /** Most digits behind a point. */
  readonly places: number
  /**
   * Longest text behind the figure, in characters, its space included; rounded up to one of the
   * style sheet's widths (2, 4 … 20).
   */
  readonly rest: number
}

/** One cell, cut for its column. */
export interface CutFigure {
  readonly figure: string
  /** Signs to leave room for: '.00', '0' or ''. */
  readonly pad: string
  /** What follows the figure: ' mL/g'. */
  readonly rest: string
}

/**
 * Sign or comparison, digits in groups of three, fraction; then up to 20 signs, for which the
 * style sheet has widths, without a comma, which would make it a list. Of a range ('0.95 to 1.05', '… bis …')
 * the upper end stands in line.
 */
const FIGURE =
  /^(?<head>(?:[^\d.]*[\d.\u2009\u202f]+ (?:to|bis) )?[^\d.]*\d+(?:[\u2009\u202f]\d{3})*)(?<fraction>\.\d+)?(?<rest>(?![\d.-])[^,]{0,20})?$/su

interface Parts {
  readonly head: string
  readonly fraction: string
  readonly rest: string
}

/** Sign before decimals. */
export type DecimalSign = '.' | ','

/** Point for comma and comma for point where decimals stand behind a comma. */
const pointed = (text: string, sign: DecimalSign): string =>
  sign === '.' ? text : text.replace(/[.,]/gu, one => (one === '.' ? ',' : '.'))

function partsOf(text: string, sign: DecimalSign): Parts | undefined {
  const groups = FIGURE.exec(pointed(text, sign))?.groups
  if (!groups) return undefined
  return {
    head: groups['head'] ?? '',
    fraction: groups['fraction'] ?? '',
    rest: groups['rest'] ?? ''
  }
}

const widthFor = (characters: number): number => 2 * Math.ceil(characters / 2)

/** Room the cells of one column need; texts without a figure ask for none. */
export function columnShape(texts: readonly string[], sign: DecimalSign = '.'): ColumnShape {
  const parts = texts.flatMap(text => partsOf(text, sign) ?? [])
  const longest = (lengths: readonly number[]): number => Math.max(0, ...lengths)
  return {
    places: longest(parts.map(part => Math.max(0, part.fraction.length - 1))),
    rest: widthFor(longest(parts.map(part => [...part.rest].length)))
  }
}

/** Cut one cell for its column; a text without a figure passes whole. */
export function cutFigure(text: string, shape: ColumnShape, sign: DecimalSign = '.'): CutFigure {
  const parts = partsOf(text, sign)
  if (!parts) return { figure: text, pad: '', rest: '' }
  const full = shape.places > 0 ? `.${'0'.repeat(shape.places)}` : ''
  return {
    figure: pointed(parts.head + parts.fraction, sign),
    pad: pointed(full.slice(parts.fraction.length), sign),
    rest: pointed(parts.rest, sign)
  }
}
