/**
 * Pages being filled from top to bottom: the cursor, page breaks, and what is tagged or only
 * decoration. Lengths in points, y from the top of the page.
 */

import type { Element, ElementOptions, Pdf } from './pdfkit.ts'
import { BLACK, drawLines, type Style, wrapText } from './text.ts'

export interface Area {
  readonly size: 'A4' | 'LETTER'
  readonly left: number
  readonly top: number
  readonly width: number
  readonly bottom: number
}

/** Margins: 17 mm at the sides, 16 mm above and below; the foot comes on top of the latter. */
const MARGIN = { side: 48, top: 45, bottom: 47 }

const sizes = { A4: [595.28, 841.89], LETTER: [612, 792] } as const

/** Space between the halves of a page. */
const HALVES_GAP = 18

/** Room that a running head and a mark above it may take on a further page. */
const MOST_ABOVE = 60

/** Signs of a text that name it in an error. */
const NAMED = 60

/** Fewest lines of a paragraph left alone on a page. */
const FEWEST_LINES = 2

/** Width of the text. */
export const textWidthOn = (size: Area['size']): number => sizes[size][0] - 2 * MARGIN.side

/** The part of a page that takes text, above a foot of some height. */
export function areaOf(size: Area['size'], foot: number): Area {
  const [, height] = sizes[size]
  return {
    size,
    left: MARGIN.side,
    top: MARGIN.top,
    width: textWidthOn(size),
    bottom: height - MARGIN.bottom - foot
  }
}

export class Sheet {
  readonly pdf: Pdf
  readonly area: Area
  /** Root of everything tagged. */
  readonly root: Element
  /** Where the next block starts. */
  y: number
  /** Pages of the file before this document's. */
  readonly before: number
  /** Where the text starts on this page. */
  private start: number
  private readonly startPage: (sheet: Sheet) => void

  /**
   * @param startPage draws what stands at the top of each further page and moves `y` below it
   * @param whole what this document is a part of, where a file holds several
   * @param lang of this document, where the file is in another language
   */
  constructor(
    pdf: Pdf,
    area: Area,
    startPage: (sheet: Sheet) => void,
    {
      whole,
      lang
    }: { readonly whole?: Element | undefined; readonly lang?: string | undefined } = {}
  ) {
    this.pdf = pdf
    this.area = area
    this.startPage = startPage
    this.root = pdf.struct(whole ? 'Part' : 'Document', lang === undefined ? {} : { lang })
    if (whole) whole.add(this.root)
    else pdf.addStructure(this.root)
    this.before = pdf.bufferedPageRange().count
    pdf.addPage({ size: area.size, margin: 0 })
    this.y = area.top
    this.start = area.top
  }

  get right(): number {
    return this.area.left + this.area.width
  }

  /** Space left on the page. */
  get space(): number {
    return this.area.bottom - this.y
  }

  /** Pages of this document. */
  get pages(): number {
    return this.pdf.bufferedPageRange().count - this.before
  }

  newPage(): void {
    this.pdf.addPage({ size: this.area.size, margin: 0 })
    this.y = this.area.top
    this.startPage(this)
    this.start = this.y
  }

  get atStart(): boolean {
    return this.y === this.start
  }

  /** Left edge of the right half; the left half ends a gap before it. */
  get middle(): number {
    return this.area.left + (this.area.width + HALVES_GAP) / 2
  }

  /** Width of either half. */
  get half(): number {
    return (this.area.width - HALVES_GAP) / 2
  }

  /**
   * Start a new page unless `height` fits on this one.
   *
   * @throws Error where it fits on no page: such a block would run over the edge
   */
  ensureSpace(height: number, text: string): void {
    if (height > this.space && !this.atStart) this.newPage()
    this.assertSpace(height, text)
  }

  /** Start a new page where `height` fits on one, but not on what is left of this. */
  keepTogether(height: number): void {
    const most = this.area.bottom - this.area.top - MOST_ABOVE
    if (height > this.space && height <= most && !this.atStart) this.newPage()
  }

  /** @throws Error where `height` does not fit on this page */
  assertSpace(height: number, text: string): void {
    if (height > this.space) throw new Error(`taller than a page: '${text.slice(0, NAMED)} …'`)
  }

  /** A structure element under `parent`. */
  element(parent: Element, tag: string, options?: ElementOptions): Element {
    const element = this.pdf.struct(tag, options)
    parent.add(element)
    return element
  }

  /** Content of one structure element, drawn at once. */
  tagged(parent: Element, tag: string, draw: () => void, options?: ElementOptions): void {
    this.element(parent, tag, options).add(draw).end()
  }

  /** Lines, marks and repeated texts that a screen reader skips. */
  artifact(draw: () => void, type: 'Pagination' | 'Layout' = 'Layout'): void {
    this.pdf.markContent('Artifact', { type })
    draw()
    this.pdf.endMarkedContent()
  }

  /** A level rule at the cursor, as wide as the text. */
  rule(thickness: number, colour = BLACK, width = this.area.width): void {
    const { pdf, y, area } = this
    this.artifact(() =>
      pdf
        .lineWidth(thickness)
        .strokeColor(colour)
        .moveTo(area.left, y)
        .lineTo(area.left + width, y)
        .stroke()
    )
  }

  /** Set a text as one element, over as many pages as it needs. */
  paragraph(
    parent: Element,
    tag: string,
    style: Style,
    text: string,
    x = this.area.left,
    width = this.right - x
  ): void {
    const element = this.element(parent, tag)
    let rest = wrapText(this.pdf, style, text, width)
    while (rest.length > 0) {
      this.ensureSpace(Math.min(FEWEST_LINES, rest.length) * style.leading, text)
      const fitting = rest.slice(0, Math.floor(this.space / style.leading))
      const top = this.y
      element.add(() => drawLines(this.pdf, style, fitting, x, top))
      this.y += fitting.length * style.leading
      rest = rest.slice(fitting.length)
    }
    element.end()
  }
}
