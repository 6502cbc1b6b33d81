/** Pictures of lots: photographs and micrographs, with what a reader is told of each. */

import type { Drawing } from '../figures/drawing.ts'

/** What is known of a file among the pictures, or why it cannot be shown. */
export type PictureHead = ShownPicture | { readonly fault: string }

/** By what its file holds, whatever its name ends in; also the end of its address. */
export type PictureKind = 'jpg' | 'png'

export interface ShownPicture {
  readonly kind: PictureKind
  readonly width_px: number
  readonly height_px: number
  /** Without what cameras write into it. */
  readonly size_bytes: number
}

/** Pictures by the names of their files. */
export type Pictures = ReadonlyMap<string, PictureHead>

/** A picture on a lot's page. */
export interface PictureText {
  /** File among the records' pictures. */
  readonly file: string
  /** Relative to the site's root. */
  readonly url: string
  readonly caption: string
  readonly width_px: number
  readonly height_px: number
  /** A bar as long as what it says, drawn below the picture at the picture's width. */
  readonly scale?: { readonly text: string; readonly drawing: Drawing }
}
