/** Moments as loggers and watchful people write them: '14:05:30', '2026-03-14 14:05', '90 s', '1.5 min'. */

import { isUnreadable, readQuantity } from './written.ts'

export interface Moment {
  /** Since midnight, or since whatever the log counts from. */
  readonly seconds: number
  /** One step of the last written digit, s. */
  readonly step: number
  /** Of the day, so that it begins anew at midnight. */
  readonly isClock: boolean
}

const CLOCK = /(?:^|[T\s])(\d{1,3}):([0-5]\d)(?::([0-5]\d)(?:[.,](\d{1,6}))?)?(?:\s*Z)?$/u

/** A moment, or undefined where the text tells none. */
export function momentOf(text: string): Moment | undefined {
  const clock = CLOCK.exec(text)
  if (clock) {
    const [, hours, minutes, seconds, fraction = ''] = clock
    const whole = (Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds ?? 0)
    const step = seconds === undefined ? 60 : Number(`1e-${fraction.length}`)
    return { seconds: whole + Number(`0.${fraction || '0'}`), step, isClock: true }
  }
  const elapsed = readQuantity(text, 's')
  if (isUnreadable(elapsed)) return undefined
  return { seconds: elapsed.value, step: elapsed.resolution, isClock: false }
}

const DAY_s = 86_400

/**
 * Seconds of each moment of a log in its order, past midnight too.
 *
 * @returns undefined where one cannot be read
 */
export function secondsOf(texts: readonly string[]): number[] | undefined {
  const moments = texts.map(momentOf)
  let [days, before] = [0, -Infinity]
  const all = moments.flatMap(moment => {
    if (!moment) return []
    if (moment.isClock && moment.seconds < before) days += 1
    before = moment.seconds
    return [moment.seconds + days * DAY_s]
  })
  return all.length === texts.length ? all : undefined
}
