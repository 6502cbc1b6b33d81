/** Options that several commands share. */

import { InvalidArgumentError, Option } from 'commander'

export const contentOption = () =>
  new Option('--content <DIR>', 'folder with the records (default: content)')

export const asOfOption = () =>
  new Option(
    '--as-of <DATE>',
    'day the lots are judged as of (default: latest date in the records)'
  ).argParser(calendarDate)

export const paperOption = () =>
  new Option('--paper <SIZE>', "paper of the certificates (default: the producer's)").choices([
    'A4',
    'Letter'
  ])

export function calendarDate(text: string): string {
  const date = new Date(`${text}T00:00:00Z`)
  const real = /^\d{4}-\d\d-\d\d$/u.test(text) && !Number.isNaN(date.valueOf())
  if (real && date.toISOString().startsWith(text)) return text
  throw new InvalidArgumentError('Write a date of the calendar as 2026-03-14.')
}
