/** Where the readings behind the figures are traced to, one sentence an instrument. */

import type { Result } from '../evaluate/types.ts'
import { calibrationOn } from '../records/references.ts'
import type { Content, Instrument, Titrant } from '../records/types.ts'
import { inSentence } from '../quantities.ts'
import { dateText } from './words.ts'

/** Sentences on every instrument and titrant behind the results, in order of their names. */
export function traceabilityOf(content: Content, results: readonly Result[]): string[] {
  const sentences = [...daysOfUse(results)].flatMap(([name, days]) => {
    const instrument = content.instruments.get(name)?.record
    const titrant = content.titrants.get(name)?.record
    if (instrument) return [...days].map(day => instrumentSentence(instrument, day))
    return titrant ? [titrantSentence(titrant)] : []
  })
  return [...new Set(sentences)].sort()
}

/** What may have been read or used for the results, by its name, and on which days. */
function daysOfUse(results: readonly Result[]): Map<string, Set<string>> {
  const uses = new Map<string, Set<string>>()
  for (const { trace, estimate, tested = '' } of results)
    for (const cause of [...Object.values(trace().instrumentOf), ...estimate.terms.keys()]) {
      const name = cause.replace(/ (concentration|calibration|tolerance)( of \S+)?$/u, '')
      uses.set(name, (uses.get(name) ?? new Set()).add(tested))
    }
  return uses
}

/** @param day of the readings: the calibration in force then is the one that counts */
function instrumentSentence(instrument: Instrument, day: string): string {
  const { id, title } = instrument
  const name = `${id} (${inSentence(title)})`
  const calibration = calibrationOn(instrument, day)
  if (!calibration) return `${name}: not calibrated, not traceable.`
  const { certificate, laboratory, against, on, due } = calibration
  const dates = `${dateText(on)}, due again ${dateText(due)}`
  if (certificate !== undefined)
    return `${name}: calibration certificate ${certificate}${laboratory ? ` of ${laboratory}` : ''}, ${dates}.`
  return against === undefined
    ? `${name}: checked in house, ${dates}, not traceable.`
    : `${name}: checked in house against ${against}, ${dates}, not traceable.`
}

const titrantSentence = ({ id, title, against, standardised, expires }: Titrant): string =>
  `${id} (${inSentence(title)}): standardised against ${against} on ${dateText(standardised)}, in use until ${dateText(expires)}.`
