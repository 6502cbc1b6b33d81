/**
 * PDFKit as used here. Its published types lag behind: parsed fonts, tagged annotations, subsets
 * and attachments are missing, so the part in use is declared here, once.
 */

import type { Font } from 'fontkit'
import PDFDocument from 'pdfkit'
import type { ShapedWords } from './shaping.ts'
import { type Info, xmpDescriptions } from './xmp.ts'

/** The two archival profiles the certificate can be written to. */
export type Subset = 'PDF/A-3a' | 'PDF/A-1b'

export interface PdfOptions {
  readonly pdfVersion: '1.7' | '1.4'
  readonly subset: Subset
  readonly tagged: true
  readonly lang: string
  readonly displayTitle: true
  readonly info: Info
  /** Without it the first text is set in a face that is not embedded. */
  readonly font: Font
  readonly autoFirstPage: false
  /** Keeps pages open until the end, so that 'n of m' can be written. */
  readonly bufferPages: true
}

/** A structure element: what a screen reader walks through. */
export interface Element {
  /** Adds a child, or content drawn by a function on the current page. */
  add(child: Element | (() => void)): Element
  end(): void
}

export interface ElementOptions {
  readonly scope?: 'Row' | 'Column'
  readonly alt?: string
  readonly lang?: string
  /** Left, top, right and bottom edge of a figure. */
  readonly bbox?: readonly [number, number, number, number]
}

export interface LinkOptions {
  readonly structParent: Element
  /** A boxed text: PDFKit writes plain ones as names. */
  readonly Contents: InstanceType<typeof String>
}

/** Values of a PDF as PDFKit takes them: a plain string is a name, a boxed one a text. */
export type PdfValue =
  | number
  | string
  | InstanceType<typeof String>
  | Date
  | Uint8Array
  | Reference
  | Dictionary
  | readonly PdfValue[]
export interface Dictionary {
  readonly [key: string]: PdfValue
}

/** An object of the file's own. */
export interface Reference {
  readonly data: object
  write(content: string): void
  end(): void
}

export interface SignatureFieldOptions {
  readonly structParent: Element
  readonly name: string
  /** What it is, in words. */
  readonly title: string
  readonly signature: Dictionary
}

export interface FileOptions {
  readonly name: string
  readonly type: string
  readonly relationship: 'Data'
  readonly description: string
  readonly creationDate: Date
  readonly modifiedDate: Date
}

export interface LineOptions {
  readonly lineBreak: false
  readonly baseline: 'alphabetic'
  /** Of the line, for underlines and links: measured anew where not given. */
  readonly textWidth: 0
  readonly wordCount: 0
}

/** The calls in use. Lengths in points, y from the top of the page. */
export interface Pdf {
  readonly page: { readonly width: number; readonly height: number }

  addPage(options: {
    readonly size: 'A4' | 'LETTER' | readonly [width: number, height: number]
    readonly margin: 0
  }): this
  switchToPage(index: number): this
  bufferedPageRange(): { readonly start: number; readonly count: number }
  end(): void

  font(source: Font | string): this
  fontSize(size: number): this
  widthOfString(text: string): number
  text(text: string, x: number, y: number, options: LineOptions): this
  /** The face in use, and the words it has shaped. */
  readonly _font: { layoutCache: ShapedWords }

  fillColor(colour: string): this
  strokeColor(colour: string): this
  lineWidth(width: number): this
  lineCap(cap: 'butt' | 'round'): this
  moveTo(x: number, y: number): this
  lineTo(x: number, y: number): this
  rect(x: number, y: number, width: number, height: number): this
  circle(x: number, y: number, radius: number): this
  /** An outline in SVG path data. */
  path(data: string): this
  save(): this
  restore(): this
  translate(x: number, y: number): this
  scale(factor: number): this
  /** Degrees, clockwise, about a point. */
  rotate(degrees: number, options: { readonly origin: readonly [number, number] }): this
  fill(): this
  stroke(): this

  struct(tag: string, options?: ElementOptions): Element
  addStructure(element: Element): this
  markContent(tag: 'Artifact', options: { readonly type: 'Pagination' | 'Layout' }): this
  endMarkedContent(): this
  link(x: number, y: number, width: number, height: number, url: string, options: LinkOptions): this

  /** A field for the file's signature over a part of the current page, which it leaves to be seen. */
  signatureField(
    x: number,
    y: number,
    width: number,
    height: number,
    options: SignatureFieldOptions
  ): void

  file(bytes: Uint8Array, options: FileOptions): object
  appendXML(xml: string): void
}

interface WrittenPage {
  write(content: Uint8Array): void
}

/** Where PDFKit writes what is done differently here. */
interface WithInternals extends Omit<Pdf, 'page' | 'signatureField'> {
  readonly page: Pdf['page'] & WrittenPage & { readonly annotations: readonly Reference[] }
  readonly _root: { readonly data: Record<string, PdfValue> }
  ref(data: Dictionary): Reference
  annotate(
    x: number,
    y: number,
    width: number,
    height: number,
    options: { readonly [key: string]: PdfValue | Element }
  ): this
  endAcroForm(): this
  readonly info: Info
  readonly options: Pick<PdfOptions, 'lang'>
  readonly x: number
  readonly y: number
  push(chunk: Uint8Array | null): boolean
  addContent(operators: string): this
  flushPages(): void
  readonly _pageBuffer: readonly WrittenPage[]
  _write(data: string | Uint8Array): void
  _addInfo(): void
  _line(text: string, options: LineOptions): void
  _fragment(text: string, x: number, y: number, options: LineOptions): void
}

/** Flags of an annotation: bits 3 and 8. Of a form with signatures: bits 1 and 2. */
const PRINTED_AND_LOCKED = 132
const SIGNED_AND_FINAL = 3

const bytesOf = (text: string): Uint8Array => Buffer.from(text, 'latin1')

const Base = PDFDocument as unknown as new (options: PdfOptions) => WithInternals

/** A PDF file whose metadata is well-formed whatever the names in it, and whose lines stand alone. */
export class PdfFile extends Base {
  /** Without values here: PDFKit writes before a field of ours could be given one. */
  declare private written?: Uint8Array[]
  declare private drawn?: Map<WrittenPage, string[]>

  /** PDFKit's own makes an event of each of some thousand pieces. */
  override push(chunk: Uint8Array | null): boolean {
    this.written ??= []
    if (chunk) this.written.push(chunk)
    return true
  }

  /** PDFKit's own makes bytes of a text sign by sign. */
  override _write(data: string | Uint8Array): void {
    super._write(typeof data === 'string' ? bytesOf(`${data}\n`) : data)
  }

  /** PDFKit's own makes bytes of each operator; a page has some thousand. */
  override addContent(operators: string): this {
    this.drawn ??= new Map()
    const before = this.drawn.get(this.page)
    if (before) before.push(operators)
    else this.drawn.set(this.page, [operators])
    return this
  }

  override flushPages(): void {
    for (const page of this._pageBuffer) {
      const operators = this.drawn?.get(page)
      if (operators) page.write(bytesOf(`${operators.join('\n')}\n`))
      this.drawn?.delete(page)
    }
    super.flushPages()
  }

  /** End the file and give its bytes. */
  finish(): Uint8Array {
    this.end()
    return Buffer.concat(this.written ?? [])
  }

  /** PDFKit's own escapes nothing and knows no PDF/UA. */
  override _addInfo(): void {
    this.appendXML(xmpDescriptions(this.info, this.options.lang))
  }

  /** PDFKit knows no signature fields. */
  signatureField(
    x: number,
    y: number,
    width: number,
    height: number,
    { structParent, name, title, signature }: SignatureFieldOptions
  ): void {
    const value = this.ref(signature)
    const clear = this.ref({ Type: 'XObject', Subtype: 'Form', BBox: [0, 0, width, height] })
    clear.write('q Q')
    this.annotate(x, y, width, height, {
      structParent,
      Subtype: 'Widget',
      FT: 'Sig',
      T: new String(name),
      TU: new String(title),
      V: value,
      F: PRINTED_AND_LOCKED,
      C: [],
      AP: { N: clear }
    })
    const form = this.ref({ Fields: [this.page.annotations.at(-1)!], SigFlags: SIGNED_AND_FINAL })
    this._root.data['AcroForm'] = form
    for (const one of [value, clear, form]) one.end()
  }

  /** PDFKit's own ends a form of its own making, with fonts for its fields. */
  override endAcroForm(): this {
    return this
  }

  /** PDFKit's own measures the line again, for a text that would go on where it ends. */
  override _line(text: string, options: LineOptions): void {
    this._fragment(text, this.x, this.y, options)
  }
}
