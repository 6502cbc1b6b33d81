/**
 * Hazard pictograms: a black symbol on a white square set at a point, within a red frame.
 *
 * Sources: CLP Annex I, 1.2.1 and Annex V (shape, colours, symbols by name; no numbers for the frame).
 * The frame's width, 0.0785 of the side, is that of the drawings the United Nations publish, measured.
 */

import { type Drawing, polygon, SIZE, type Spot, white } from './path.ts'
import { symbols } from './symbols.ts'

export type PictogramCode = keyof typeof symbols

/** What each is called in English: the one place that says so. */
export const pictogramTitles: Readonly<Record<PictogramCode, string>> = {
  GHS02: 'Flame',
  GHS03: 'Flame over circle',
  GHS04: 'Gas cylinder',
  GHS05: 'Corrosion',
  GHS06: 'Skull and crossbones',
  GHS07: 'Exclamation mark',
  GHS08: 'Health hazard',
  GHS09: 'Environment'
}

/** Width of the frame as part of its side; across a corner it is √2 wider, as the square's side is. */
const FRAME = 0.0785

/** A square at a point, so far inside the drawing. */
const square = (inset: number): string =>
  polygon([
    [SIZE / 2, inset],
    [SIZE - inset, SIZE / 2],
    [SIZE / 2, SIZE - inset],
    [inset, SIZE / 2]
  ] satisfies Spot[])

/** Half the white square's height and width, in units of the drawing. */
export const WHITE_REACH = SIZE / 2 - FRAME * SIZE

export const isPictogram = (code: string): code is PictogramCode => Object.hasOwn(symbols, code)

/** Draw a pictogram. Its side in print is the frame's: the drawing is √2 times that wide. */
export const pictogram = (code: PictogramCode): Drawing => ({
  title: pictogramTitles[code],
  parts: [{ path: square(0), ink: 'red' }, white(square(FRAME * SIZE)), ...symbols[code]]
})
