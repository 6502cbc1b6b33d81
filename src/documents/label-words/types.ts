/** The words of a label, in one language. */

import type { PictogramCode } from '../../figures/pictograms.ts'
import type { SignalWord } from '../../hazards/classes.ts'

/** Ways into the body. */
export type Route = 'oral' | 'dermal' | 'inhalation'

export interface LabelWords {
  readonly decimalSign: '.' | ','
  readonly products: { readonly batch: string; readonly foil: string }
  readonly signals: Readonly<Record<SignalWord, string>>
  readonly lot: string
  readonly quantity: string
  readonly made: string
  /** Before the number of one container. */
  readonly container: string
  readonly retest: string
  /** The European list's abbreviation: 'EC'. */
  readonly ec: string
  readonly telephone: string
  /** What is of unknown acute toxicity, in %, by a route; a full sentence. */
  readonly unknown: (percent: string, route: Route) => string
  /** Before the names of what makes the product dangerous. */
  readonly contains: string
  readonly keepDry: string
  /** From a temperature with its unit. */
  readonly keepBelow: (temperature: string) => string
  /** On a container too small for more. */
  readonly outerPackage: string
  /** For who cannot see them. */
  readonly qr: (url: string) => string
  readonly pictograms: Readonly<Record<PictogramCode, string>>
  /** Names of ingredients, by the first English name in the list of substances. */
  readonly substances: Readonly<Record<string, string>>
}
