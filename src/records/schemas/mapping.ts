/** How a file of readings, or an old list of lots, is laid out: which column is which field. */

import * as z from 'zod'
import { quoted } from '../../problem.ts'
import { fields, identifier, list, maybe, quantity, refuse, text, whole, yesNo } from '../fields.ts'
import { quantityKeys } from './common.ts'
import { foilTests } from './foil-tests.ts'
import { flakeTests } from './tests.ts'

/** Parts of a record that readings fill. */
export const fillable = [
  'sheets',
  'thickness',
  'log',
  ...Object.keys(flakeTests),
  ...Object.keys(foilTests)
] as const

/** Records that an old list can become, one for each line. */
export const movable = ['batch', 'expansion', 'foil', 'material'] as const
export type Movable = (typeof movable)[number]

const isMovable = (fills: string) => movable.some(kind => kind === fills)

/** How the file is written, where it leaves a doubt. */
const fileForm = fields({
  encoding: maybe(z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'])),
  delimiter: maybe(z.enum(['comma', 'semicolon', 'tab', 'bar'])),
  decimal: maybe(z.enum(['point', 'comma'])),
  thousands: maybe(z.enum(['point', 'comma', 'space', 'apostrophe'])),
  sheet: maybe(text()),
  /** no: columns are named by their number, from 1. */
  headings: maybe(yesNo()),
  /** Line of the units, counted from the headings. */
  'units-below': maybe(whole(1))
})

/** What becomes of several lines of one reading where the field takes one value. */
export const takes = ['largest', 'smallest', 'first', 'last'] as const

/** Orders of day, month and year. */
export const dateForms = ['year-month-day', 'day-month-year', 'month-day-year'] as const
export type DateForm = (typeof dateForms)[number]

const column = fields({
  column: text(),
  /** Field it fills; without one it is left out. */
  to: maybe(text()),
  /** Of an old list: the figure it holds, which is not taken over but held against ours. */
  figure: maybe(z.enum(quantityKeys)),
  unit: maybe(text()),
  /** Decimals the instrument shows, where a spreadsheet dropped them. */
  places: maybe(whole(0)),
  date: maybe(z.enum(dateForms)),
  /** Words of the file and what a record writes for them. */
  words: maybe(z.record(text(), text())),
  take: maybe(z.enum(takes)),
  /** Only lines that have these words in these columns. */
  where: maybe(z.record(text(), text()))
})

export const mappingRecord = fields({
  id: identifier(),
  title: maybe(text()),
  fills: z.enum([...fillable, ...movable]),
  file: maybe(fileForm),
  /** Column whose entry is the same on all lines of one reading; 'file': all lines are one. */
  reading: maybe(text()),
  columns: list(column),
  /** Lines that have one of these words in this column are passed over. */
  skip: maybe(z.record(text(), list(text()))),
  /** Fields that every reading or record gets besides. */
  set: maybe(z.record(text(), text())),
  /** Of a log: the first line, then each at least this much later, the hottest and the last. */
  every: maybe(quantity('s', 'above 0'))
}).superRefine(({ columns, every_s, fills }, context) => {
  if (every_s && fills !== 'log')
    refuse(context, ['every_s'], 'INVALID_VALUE', ['thins out a log alone', 'take it out'])
  if (!columns.some(({ to }) => to !== undefined))
    refuse(context, ['columns'], 'MISSING_FIELD', [
      'no column fills a field',
      "write 'to:' beside a column"
    ])
  for (const [index, { to, ...rest }] of columns.entries()) {
    if (rest.figure !== undefined && (to !== undefined || !isMovable(fills)))
      refuse(context, ['columns', index, 'figure'], 'INVALID_VALUE', [
        to === undefined
          ? 'is held against a lot of an old list alone'
          : 'is held against ours, and fills no field',
        to === undefined ? 'take it out' : "keep 'figure:' or 'to:'"
      ])
    const surplus =
      to === undefined &&
      rest.figure === undefined &&
      Object.keys(rest).find(key => key !== 'column' && key !== 'where')
    if (surplus)
      refuse(context, ['columns', index, surplus], 'INVALID_VALUE', [
        `says how ${quoted(rest.column)} is read, which fills nothing`,
        "write 'to:' beside it, or take it out"
      ])
  }
})
