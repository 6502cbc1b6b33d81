/** The two ways a label can be laid out, each tried at a size. Lengths in millimetres. */

import type { LabelContent } from '../documents/label-types.ts'
import { QUIET_MODULES } from '../figures/qr.ts'
import {
  blocksOf,
  column,
  footOf,
  headOf,
  type PlacedCode,
  type PlacedItem,
  type PlacedPictogram
} from './label-items.ts'
import type { Measure } from './label-text.ts'

/** Pictograms beside the text, or in a row above it. */
export const arrangements = ['beside', 'above'] as const

export interface Arrangement {
  readonly kind: (typeof arrangements)[number]
  readonly width: number
  readonly height: number
  /** Of the body type. */
  readonly size: number
  readonly leading: number
  /** Side of a pictogram's frame. */
  readonly pictogram: number
  /** Modules on a side of the code, its quiet zone included. */
  readonly modules: number
  /** Statements run on instead of each starting a line. */
  readonly isJoined: boolean
}

/** Side of one module of the code: at least five dots of a common label printer (300 dpi). */
const MODULE = { least_mm: 0.42, most_mm: 0.8, ofSize: 0.15 } as const

/** Narrowest column of text, in sizes of type. */
const NARROWEST = 9

/** A square standing on its corner is as wide as its diagonal. */
const acrossOf = (side: number) => side * Math.SQRT2

interface Frame extends Arrangement {
  readonly pad: number
  readonly gap: number
  /** Width of a pictogram from tip to tip, and side of the code. */
  readonly across: number
  readonly codeSide: number
  /** Width of the code's white edge, which may lie in the label's own. */
  readonly quiet: number
}

function frameOf(content: LabelContent, how: Arrangement): Frame {
  const { least_mm, most_mm, ofSize } = MODULE
  const module = Math.min(most_mm, Math.max(least_mm, ofSize * how.size))
  const quiet = QUIET_MODULES * module
  return {
    ...how,
    pad: Math.min(6, Math.max(2, 0.04 * Math.min(how.width, how.height))),
    gap: Math.max(1.5, 0.6 * how.size),
    across: acrossOf(how.pictogram),
    codeSide: content.code ? module * how.modules - 2 * quiet : 0,
    quiet
  }
}

/** Everything in its place, or undefined where it does not fit. */
export function arrange(
  content: LabelContent,
  measure: Measure,
  how: Arrangement
): PlacedItem[] | undefined {
  const frame = frameOf(content, how)
  return how.kind === 'beside' ? beside(content, measure, frame) : above(content, measure, frame)
}

/** Pictograms and code below each other on the left, all text on the right. */
function beside(content: LabelContent, measure: Measure, frame: Frame): PlacedItem[] | undefined {
  const { width, height, pad, gap, across, codeSide, quiet, isJoined } = frame
  const count = content.pictograms.length
  const inner = height - 2 * pad
  const tall = count * across + (content.code ? codeSide + (count > 0 ? quiet : 0) : 0)
  const rail = Math.max(count > 0 ? across : 0, codeSide)
  const x = pad + rail + (rail > 0 ? Math.max(quiet, 1.2 * gap) : 0)
  const place = { x, y: pad, width: width - pad - x }
  if (tall > inner || place.width < NARROWEST * frame.size) return undefined
  const upper = column([...headOf(content), ...blocksOf(content, isJoined)], measure, place, frame)
  const lower = column(footOf(content, isJoined), measure, { ...place, y: 0 }, frame)
  if (upper.bottom + gap + lower.bottom > height - pad) return undefined
  const down = height - pad - lower.bottom
  return [
    ...upper.items,
    ...pictogramsAt(content, frame, index => ({
      x: pad + (rail - across) / 2,
      y: pad + index * across
    })),
    ...lower.items.map(item => ({ ...item, y: item.y + down })),
    ...codeAt(content, frame, pad + (rail - codeSide) / 2, height - pad - codeSide)
  ]
}

/** Pictograms in rows, the product's name beside them where there is room; the code at the bottom. */
function above(content: LabelContent, measure: Measure, frame: Frame): PlacedItem[] | undefined {
  const { width, height, pad, gap, across, codeSide, quiet, isJoined } = frame
  const inner = width - 2 * pad
  const count = content.pictograms.length
  const inRow = Math.min(count, Math.floor(inner / across))
  if (count > 0 && inRow === 0) return undefined
  const rows = count === 0 ? 0 : Math.ceil(count / inRow)
  const taken = inRow * across + (count > 0 ? gap : 0)
  const hasRoom = inner - taken >= NARROWEST * frame.size
  const headX = hasRoom ? pad + taken : pad
  const head = column(
    headOf(content),
    measure,
    { x: headX, y: pad, width: width - pad - headX },
    frame
  )
  const rowsTop = hasRoom ? pad : head.bottom + (count > 0 ? gap / 2 : 0)
  const rowsBottom = rowsTop + rows * across
  const below = Math.max(head.bottom, rowsBottom) + gap / 2
  const body = column(
    blocksOf(content, isJoined),
    measure,
    { x: pad, y: below, width: inner },
    frame
  )
  const footWidth = inner - (content.code ? codeSide + Math.max(quiet, gap) : 0)
  if (footWidth < NARROWEST * frame.size) return undefined
  const foot = column(footOf(content, isJoined), measure, { x: pad, y: 0, width: footWidth }, frame)
  const footTop = height - pad - Math.max(foot.bottom, content.code ? codeSide + quiet - gap : 0)
  if (body.bottom + gap > footTop) return undefined
  const down = height - pad - foot.bottom
  return [
    ...head.items,
    ...pictogramsAt(content, frame, index => ({
      x: pad + (index % inRow) * across,
      y: rowsTop + Math.floor(index / inRow) * across
    })),
    ...body.items,
    ...foot.items.map(item => ({ ...item, y: item.y + down })),
    ...codeAt(content, frame, width - pad - codeSide, height - pad - codeSide)
  ]
}

const pictogramsAt = (
  { pictograms }: LabelContent,
  { across }: Frame,
  at: (index: number) => { readonly x: number; readonly y: number }
): PlacedPictogram[] =>
  pictograms.map((pictogram, index) => ({
    is: 'pictogram',
    pictogram,
    ...at(index),
    width: across,
    height: across
  }))

/** The code with its dark modules in a square at a place. */
const codeAt = (
  { code }: LabelContent,
  { codeSide, quiet }: Frame,
  x: number,
  y: number
): PlacedCode[] => {
  const side = codeSide + 2 * quiet
  return code ? [{ is: 'code', code, x: x - quiet, y: y - quiet, width: side, height: side }] : []
}
