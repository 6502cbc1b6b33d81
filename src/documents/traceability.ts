/** Where the readings behind the figures are traced to, one sentence an instrument. */

import type { Result } from '../evaluate/types.ts'
import { calibrationOn } from '../records/references.ts'
import type { Content, Instrument, Titrant } from '../records/types.ts'
import { inSentence } from '../quantities.ts'
import { dateText } from './words.ts'

/** Sentences on every instrument and titrant behind the results, in order of their names. */
export function traceabilityOf(content: Content, results: readonly Result[]): string[] {
  const sentences = results.flatMap(({ trace, estimate, tested = '' }) => {
    const names = [
      ...Object.values(trace.instrumentOf),
      ...[...estimate.terms.keys()].map(cause =>
        cause.replace(/ (concentration|calibration|tolerance)( of \S+)?$/u, '')
      )
    ]
    return names.flatMap(name => {
      const instrument = content.instruments.get(name)?.record
      const titrant = content.titrants.get(name)?.record
      if (instrument) return [instrumentSentence(instrument, tested)]
      return titrant ? [titrantSentence(titrant)] : []
    })
  })
  return [...new Set(sentences)].sort()
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
