/** A lot's page, in English. */

import { datesIn } from '../numbers.ts'

export const lot = {
  title: (lot: string, kind: string) => `Lot ${lot}, ${kind}`,
  heading: (lot: string) => `Lot ${lot}`,
  grade: 'grade',
  revision: (n: string) => `revision ${n}`,
  meets: 'Does it meet its grade?',
  keyFacts: 'Key facts',
  results: 'Results',
  pictures: 'Pictures',
  amongGrade: 'Among its grade',
  amongLots: 'Among the lots of its grade',
  rule: 'Decision rule',
  papers: 'Papers',
  workings: 'Workings',
  screening: 'Coating panels',
  chain: 'Chain of lots',
  traceability: 'Traceability',
  hazards: 'Hazards',
  cautions: 'Cautions',
  compare: 'Compare with other lots',
  onLot: 'on this lot',
  howToRead: 'How to read U, k, P and the verdicts',
  curves: 'Curves',
  field: 'Thickness over the sheets',
  readings: 'The readings in a table:',
  workingOfThickness: 'working of thickness',
  unfolded:
    'Workings that were unfolded when this was printed are shown; the rest stand on the page itself.',
  copy: (lot: string) => `Web copy of lot ${lot}.`,
  certificateIsPdf: 'The certificate is the PDF.',
  certificatePage: 'The certificate’s page:',
  thisLot: '(this lot)',
  from: 'from',
  picture: (n: number, lot: string, caption: string) => `Picture ${n} of lot ${lot}: ${caption}`,
  bar: (length: string) => `The bar is ${length} long`,
  /** Of a strip: the figure, its place, and from where to where the others lie. */
  strip: (value: string, place: string, others: string) =>
    `${value}, ${place}; the others from ${others}.`,
  noStatement: 'No hazard statement is declared.',
  why: 'Why',
  wording: (edition: string) => `Wording: ${datesIn(edition)}.`,
  rejected: 'This lot was rejected and is not for sale.',
  concession: 'This lot was let go under a concession and is not released for general sale.',
  unpublished: (grade: string) =>
    `The results of grade ${grade} are not published; whether the lot was let go is its status.`
}

/** Tables of results, and what stands below them. */
export const results = {
  property: 'Property',
  result: 'Result',
  external: 'external',
  earlier: 'earlier record',
  externalMark: 'External',
  earlierMark: 'Earlier record',
  working: 'Working',
  workingOf: (title: string) => ` of ${title}`,
  verdict: 'Verdict',
  probability: 'probability that the true value meets the limit',
  count: 'number of readings or sheets',
  decidedBy: (printed: string) => `decided by ${printed}`,
  notJudged: 'not judged',
  noMethod: 'no method named',
  testedOn: 'tested on',
  typicalValue: 'Typical value',
  gradeLimit: 'Limit of the grade',
  measured: (where: string) => `Measured ${where}`,
  typical: (where: string) => `Typical of the grade: not measured ${where}`,
  missing: 'Not measured: no figure for this lot',
  whyVerdicts: 'Why each verdict',
  formula: 'Formula',
  source: 'Source:',
  method: 'Method:',
  outcome: 'Result:'
}

/** How to read a figure; the verdicts themselves stand with the tables. */
export const reading = {
  heading: 'How to read a figure',
  lead: (example: string) =>
    `A result stands with its uncertainty and the unit: ${example} (an example).`,
  example: '262.1 ± 4.3 mL/g, k = 2.04',
  U: 'Expanded uncertainty. The true value is expected between result − U and result + U, with about 95 % confidence.',
  k: 'Coverage factor: how many standard uncertainties U stands for. The fewer the readings behind a figure, the larger k.',
  belowExample: '< 0.02',
  below: 'Less than the method can report. It is not nought.',
  limit: 'What the grade asks for. ≥ is at least, ≤ is at most.',
  pass: 'Meets the limit, with the margin that the decision rule asks for.',
  conditionalPass: 'The result meets the limit, but by less than that margin.',
  conditionalFail: 'The result misses the limit, but by less than that margin.',
  fail: 'Does not meet the limit.',
  notDecidable: 'The figure cannot settle it, such as an upper bound against a lower limit.',
  P: 'Probability of conformity: how likely it is that the true value meets the limit.',
  n: 'Number of readings, or of sheets, behind the result.',
  typicalTerm: 'Typical',
  typical: (notMeasured: string) =>
    `Usual for the grade, not measured on the lot. ${notMeasured} means that there is no figure.`,
  notMeasured: 'Not measured'
}
