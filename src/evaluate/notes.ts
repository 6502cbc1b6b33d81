/** Sentences beside a working, as the parts any language can word. */

/** One that says the same whatever the lot. */
export type FixedNote =
  | 'budget bends'
  | 'scatter between sheets'
  | 'bulk density tested'
  | 'scatter of ash'
  | 'water not read'
  | 'foil taken as alike'
  | 'bounds of L'
  | 'bolt and rig'
  | 'ideal gas'
  | 'no blank read'
  | 'no blank weighed'
  | 'whole extract titrated'
  | 'reporting limit'

/** A note with what was written in the record, digits and unit as they stand there. */
export type Note =
  | { readonly is: FixedNote }
  /** Readings whose own scatter the method's repeatability stands in for. */
  | { readonly is: 'pooled'; readonly n: number }
  | {
      readonly is:
        | 'bulk density recorded'
        | 'water'
        | 'heat capacity'
        | 'leached with'
        | 'blank'
        | 'titrated to pH'
      readonly written: string
    }
  | { readonly is: 'blanks'; readonly written: readonly string[] }
  | { readonly is: 'aliquot'; readonly extract: string; readonly aliquot: string }
  /** Four points in a line, on a disc or on a sheet without end. */
  | { readonly is: 'points'; readonly apart: string; readonly disc?: string }
  | { readonly is: 'closed volume'; readonly volume: string; readonly diameter: string }
  /** Number of the coarsest sieve. */
  | { readonly is: 'retained'; readonly sieve: number }
