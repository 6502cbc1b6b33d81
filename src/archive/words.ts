/**
 * What the scripts of pages say: English here; a page in another language brings its own, in the same
 * shape. What differs from case to case stands in braces.
 */

import { fillGaps } from '../gaps.ts'

export const scriptWords = {
  /** How a day is shown: year, month, day. */
  day: '{y}-{m}-{d}',
  /** Before decimals. */
  sign: '.',
  lot: 'Lot',
  made: 'Made',
  grade: 'Grade',
  product: 'Product',
  meets: 'Meets its grade?',
  status: 'Status',
  keyFigures: 'Key figures',
  property: 'Property',
  nothing: 'none',
  notMeasured: 'not measured',
  found: 'Lots found',
  noneFound: 'No lot is found. Take a filter away, or a part of the number.',
  all: 'All {n} lots',
  some: '{n} of {all} lots',
  first: '{count}, first {lot}',
  more: 'Show {n} more',
  compare: 'Compare {n} lots',
  compareLot: 'Compare {lot}',
  another: 'Choose another lot to compare with',
  chooseNone: 'None',
  listFailed: 'The list of lots did not load: reload the page, or use the plain lists below.',
  lowestFirst: '{title}, lowest first',
  highestFirst: '{title}, highest first',
  atLeast: 'at least',
  atMost: 'at most',
  to: 'to',
  field: '{title}, {end}',
  fieldIn: '{title}, {end}, in {unit}',
  addTwo: 'Add two lots at least.',
  addAnother: 'Add another lot.',
  beside: 'Lots beside each other',
  differ:
    '{n} lots beside each other; {larger} figures differ from those of {lot} by more than they are uncertain.',
  takeAway: 'Take {lot} away',
  writeFirst: 'Write the number of a lot first.',
  notFound: 'No lot is found for “{text}”.',
  isThere: '{lot} is there already.',
  most: 'No more than {n} lots stand beside each other: take one away first.',
  fetching: 'Fetching the list of lots …',
  figuresFailed: 'The figures did not load: reload the page.',
  limit: 'limit {limit}',
  comparedWith: 'compared with',
  larger: 'more than they are uncertain',
  'not larger': 'no more than they are uncertain',
  unknown: 'cannot be said',
  below: 'one of them is only known to be below a bound',
  unstated: 'no uncertainty is stated for one of them',
  methods: 'measured by different methods',
  apart: 'taken as independent, as the working of one is not published',
  nothingAsked: 'nothing is asked yet',
  lotsThatAnswer: 'Lots that answer to it:',
  andMore: 'and {n} more',
  lotsFailed: 'The lots did not load: reload the page, or read the tables.',
  answers: {
    certified: 'met by certified limit',
    typical: 'met by typical figures',
    'some lots': 'met by some released lots only',
    'not known': 'not known',
    'not met': 'not met'
  },
  reasons: {
    certified: 'every lot is judged by a limit within it',
    typical: 'no limit holds it, typical figures do',
    'some lots': 'neither limit nor typical figures hold it, figures of some lots do',
    'not known': 'no released lot has a figure with its uncertainty',
    'not met': 'neither limit nor any released lot’s figure with its uncertainty lies within it'
  },
  noSingle: 'no single released lot answers to all of it',
  noSingleKnown: 'no single released lot is known to answer to all of it',
  /** By the word a list has for them; a word that is not here is told as it is. */
  verdicts: {} as Readonly<Record<string, string>>,
  states: {} as Readonly<Record<string, string>>
}

export type ScriptWords = typeof scriptWords

/** A text with its gaps filled. */
export const fill = (text: string, parts: Readonly<Record<string, string | number>>): string =>
  fillGaps(text, name => parts[name])
