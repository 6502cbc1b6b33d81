/** Whose result a figure is that was measured elsewhere. */
export interface ReportText {
  /** The laboratory where it may be named, else 'an external laboratory'. */
  readonly by: string
  readonly number: string
  readonly date: string
  readonly method?: string
  readonly scope?: string
  readonly sha256?: string
  /** All of it, for a reader: begins 'External result'. */
  readonly sentence: string
}
