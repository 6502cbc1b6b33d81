/** Whose result a figure is that comes without its readings. */
export interface ReportText {
  /** The laboratory where it may be named, else 'an external laboratory'. */
  readonly by: string
  /** Measured by the producer, before these records; 'by' then says so. */
  readonly own?: true
  readonly number: string
  readonly date: string
  readonly method?: string
  readonly scope?: string
  readonly sha256?: string
  /** All of it, for a reader: begins 'External result', or 'Own earlier result'. */
  readonly sentence: string
}

/** What stands behind the title of such a result wherever it is shown. */
export const reportMark = ({ own }: ReportText): string => (own ? 'earlier record' : 'external')
