/** The story on one screen: content folder → documents or problems. */

import type { SiteDocument } from './documents/types.ts'
import type { Problem, SourceFile } from './problem.ts'

export interface SiteOptions {
  readonly edition: 'public' | 'workshop'
  /** Day the lots are judged as of, YYYY-MM-DD; the latest date in the content by default. */
  readonly asOf?: string
  readonly paper?: 'A4' | 'Letter'
}

export interface SiteResult {
  /** Absent when any problem is an error. */
  readonly site?: SiteDocument
  /** Warnings, and errors if any, in file order. */
  readonly problems: readonly Problem[]
}

/** Every document of a site, or everything that is wrong with its records. */
export declare function buildDocuments(
  files: readonly SourceFile[],
  options: SiteOptions
): SiteResult
