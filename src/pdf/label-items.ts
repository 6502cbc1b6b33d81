/** What stands on a label, before and after it has a place. Lengths in millimetres. */

import type { LabelBlock, LabelContent } from '../documents/label-types.ts'
import type { PictogramText } from '../documents/types.ts'
import type { Face } from './fonts.ts'
import { breakLines, type Measure } from './label-text.ts'

interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** One text in lines. */
export interface PlacedText extends Box {
  readonly is: 'text'
  readonly tag: 'H1' | 'P'
  readonly language?: string
  readonly face: Face
  readonly size: number
  readonly leading: number
  readonly lines: readonly string[]
}

export interface PlacedPictogram extends Box {
  readonly is: 'pictogram'
  readonly pictogram: PictogramText
}

export interface PlacedCode extends Box {
  readonly is: 'code'
  readonly code: NonNullable<LabelContent['code']>
}

export type PlacedItem = PlacedText | PlacedPictogram | PlacedCode

/** A text still to be placed. Size and gap above in sizes of the body type. */
export interface Paragraph {
  readonly text: string
  readonly tag: 'H1' | 'P'
  readonly language?: string
  readonly face: Face
  readonly size: number
  readonly gap: number
}

const paragraph = (
  text: string | undefined,
  options: Partial<Omit<Paragraph, 'text'>> = {}
): Paragraph[] =>
  text === undefined || text === ''
    ? []
    : [{ text, tag: 'P', face: 'regular', size: 1, gap: 0, ...options }]

/** Name of the product, and what it is. */
export function headOf({ name, product, identifiers, pictograms }: LabelContent): Paragraph[] {
  const plain = product.length === 1 ? product[0] : undefined
  const text = product.map(one => one.text)
  return [
    ...paragraph(name, { tag: 'H1', face: 'semibold', size: pictograms.length > 0 ? 1.5 : 1.8 }),
    ...(plain
      ? paragraph(plain.text, { face: 'semibold', language: plain.language })
      : paragraph([...new Set(text)].join(' · '), { face: 'semibold' })),
    ...identifiers.flatMap(text => paragraph(text))
  ]
}

/** Signal word, statements and storage in every language. */
export const blocksOf = ({ blocks }: LabelContent, isJoined: boolean): Paragraph[] =>
  blocks.flatMap((block, index) => blockOf(block, isJoined, index))

function blockOf(block: LabelBlock, isJoined: boolean, index: number): Paragraph[] {
  const { language, signal, contains, hazards, precautions, storage, outer } = block
  const first = index === 0 ? 0.5 : 0.6
  const gap = isJoined ? 0 : 0.2
  const texts = (all: readonly string[], face: Face) =>
    (isJoined ? [joined(all)] : all).flatMap(text => paragraph(text, { language, face, gap }))
  const [head, ...rest] = [
    ...paragraph(signal, { language, face: 'semibold', size: 1.3 }),
    ...paragraph(contains, { language }),
    ...texts(hazards, 'semibold'),
    ...texts(precautions, 'regular'),
    ...paragraph(storage, { language, gap }),
    ...paragraph(outer, { language })
  ]
  return head ? [{ ...head, gap: first }, ...rest] : []
}

/** Sentences after each other; some that the law prints lack their full stop. */
const joined = (texts: readonly string[]): string =>
  texts
    .map((text, index) => (index < texts.length - 1 && !/[.!?]$/u.test(text) ? `${text}.` : text))
    .join(' ')

/** Lot, quantity, dates and whose wording it is, then who supplies it. */
export function footOf({ facts, supplier, wording }: LabelContent, isJoined: boolean): Paragraph[] {
  const told = facts.map(({ label, text }) => `${label}:\u00a0${text}`)
  const shown = wording === undefined ? told : [...told, wording.replaceAll(' ', '\u00a0')]
  const [name, ...address] = supplier
  return [
    ...(isJoined ? [shown.join(' · ')] : shown).flatMap(text => paragraph(text)),
    ...paragraph(name, { face: 'semibold', gap: facts.length > 0 ? 0.5 : 0 }),
    ...address.flatMap(line => paragraph(line))
  ]
}

/** Paragraphs in a column, from its top. */
export function column(
  paragraphs: readonly Paragraph[],
  measure: Measure,
  place: { readonly x: number; readonly y: number; readonly width: number },
  { size: body, leading: lead }: { readonly size: number; readonly leading: number }
): { readonly items: PlacedText[]; readonly bottom: number } {
  let y = place.y
  const items = paragraphs.map(({ text, size: times, gap, ...rest }, index): PlacedText => {
    const size = body * times
    const leading = size * lead
    const lines = breakLines(measure, rest.face, size, text, place.width)
    if (index > 0) y += gap * body
    const item = {
      is: 'text' as const,
      ...rest,
      x: place.x,
      y,
      width: place.width,
      height: lines.length * leading,
      size,
      leading,
      lines
    }
    y += item.height
    return item
  })
  return { items, bottom: y }
}
