/** A QR code (ISO/IEC 18004) as level strokes, for any renderer. */

import { encode } from 'uqr'

/** Light modules around a code, without which readers fail: ISO/IEC 18004 asks for four. */
export const QUIET_MODULES = 4

export interface QrFigure {
  /** Side in modules, the quiet zone on both sides included. */
  readonly size: number
  /** Dark runs: left and top edge and length in modules, one module high. */
  readonly runs: readonly { readonly x: number; readonly y: number; readonly length: number }[]
}

/**
 * The code of a text.
 *
 * Error correction M restores about 15 % of a scratched code, and keeps the modules large.
 *
 * @throws Error where the text is too long for the largest code, some 2,300 signs
 */
export function qrFigure(text: string): QrFigure {
  const { data, size } = encode(text, { ecc: 'M', border: QUIET_MODULES })
  return { size, runs: data.flatMap((row, y) => runsOf(row).map(run => ({ ...run, y }))) }
}

function runsOf(row: readonly boolean[]): { x: number; length: number }[] {
  const runs: { x: number; length: number }[] = []
  row.forEach((dark, x) => {
    const last = runs.at(-1)
    if (!dark) return
    if (last && last.x + last.length === x) last.length += 1
    else runs.push({ x, length: 1 })
  })
  return runs
}
