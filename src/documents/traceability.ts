/** Where the readings behind the figures are traced to, one sentence an instrument. */

import type { Result } from '../evaluate/types.ts'
import { calibrationOn } from '../records/references.ts'
import type { Content, Instrument, Titrant } from '../records/types.ts'
import { english, type Tongue } from './languages/tongue.ts'

/** Sentences on every instrument and titrant behind the results, in order of their names. */
export function traceabilityOf(
  content: Content,
  results: readonly Result[],
  tongue = english
): string[] {
  const sentences = [...daysOfUse(results)].flatMap(([name, days]) => {
    const instrument = content.instruments.get(name)?.record
    const titrant = content.titrants.get(name)?.record
    if (instrument) return [...days].map(day => instrumentSentence(instrument, day, tongue))
    return titrant ? [titrantSentence(titrant, tongue)] : []
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

/** 'BAL-1 (analytical balance)' */
const named = ({ id, title }: Pick<Instrument, 'id' | 'title'>, { numbers, own }: Tongue) =>
  `${id} (${numbers.inSentence(own(title))})`

/** A certificate's number stands as it is; one that is told in words is a text of the record. */
const titled = (certificate: string, { own }: Tongue): string =>
  /\s/u.test(certificate) ? own(certificate) : certificate

/** @param day of the readings: the calibration in force then is the one that counts */
function instrumentSentence(instrument: Instrument, day: string, tongue: Tongue): string {
  const { lot: words, own } = tongue
  const name = named(instrument, tongue)
  const calibration = calibrationOn(instrument, day)
  if (!calibration) return words.uncalibrated(name)
  const { certificate, laboratory, against, on, due } = calibration
  return certificate === undefined
    ? words.checked(name, against && own(against), on, due)
    : words.calibrated(name, titled(certificate, tongue), laboratory, on, due)
}

const titrantSentence = (titrant: Titrant, tongue: Tongue): string =>
  tongue.lot.standardised(
    named(titrant, tongue),
    tongue.own(titrant.against),
    titrant.standardised,
    titrant.expires
  )
