/**
 * What a budget line is called, as the parts any language can word. The line's own name (`pool`) says the
 * same in English and is what correlation goes by; parts are said beside it and nothing goes by them.
 */

/** What was read: a quantity by its key, a sheet's thickness, blanks of a test. */
export type ReadOf =
  | { readonly lot: string; readonly quantity: string }
  | { readonly lot: string; readonly sheet: string }
  /** `quantity` where a lot has blanks of several tests. */
  | { readonly lot: string; readonly blanks: true; readonly quantity?: string }

export type BudgetLineParts =
  | {
      readonly is: 'calibration' | 'tolerance'
      readonly instrument: string
      /** Day of the calibration, where there are several. */
      readonly of?: string
    }
  | { readonly is: 'resolution'; readonly instrument: string }
  /** No instrument is named: the digits written are all that is known. */
  | { readonly is: 'written digits' }
  | {
      readonly is: 'repeatability'
      readonly method: string
      /** '2 %', where it is of the result. */
      readonly ofResult?: string
      /** How it was found, as the method's record says. */
      readonly from: string
    }
  | { readonly is: 'concentration'; readonly titrant: string }
  | { readonly is: 'scatter'; readonly of: ReadOf; readonly n: number; readonly plane?: true }
  | {
      readonly is: 'stated'
      readonly lot: string
      readonly what: 'bulk density' | 'heat capacity' | 'temperature of the estimate'
    }
  | { readonly is: 'time of leak'; readonly lot: string; readonly time: string }
  | {
      readonly is: 'reported'
      readonly lot: string
      readonly quantity: string
      readonly report: string
    }
  | { readonly is: 'aperture'; readonly aperture_um: number }
  | {
      readonly is: 'known'
      readonly what:
        | 'crystal density of graphite'
        | 'temperature coefficient of conductivity'
        | 'L of graphite foil'
    }
