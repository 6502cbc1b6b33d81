/** What a producer says of a grade, in English: its datasheet, beside results and hazards. */

import { counted, date, list } from './numbers.ts'

export const grade = {
  statements: [
    'A datasheet promises nothing of a lot: its certificate says what was found on it and whether it meets the limits of its grade.',
    'It is no safety data sheet and no inspection document to EN 10204.',
    'Heating and bench results are no fire-resistance rating.'
  ] as readonly string[],
  population: [
    'Of lots of this grade that were let go. The limits decided which lots these are, so no interval here takes figures as normal where there is a limit.',
    'At least the part of lots that is given lies from one value to the other, both included, with the confidence that is given. Figures are as measured: the intervals hold what measuring adds.'
  ] as readonly string[],
  earlier: (revision: number) =>
    `Among these lots are some made before revision ${revision}; they met the limits of their day.`,
  ofEachLot: (plan: string) => `of each lot: ${plan}`,
  supply: { sizes: 'Sizes', soldIn: 'Sold in', keep: 'Keep', testedAgain: 'Tested again' },
  containers: { drum: 'drum', pail: 'pail', pouch: 'pouch', carton: 'carton' },
  container: (kind: string, capacity: string, holds: string) =>
    `${kind} of ${capacity} with ${holds}`,
  dry: 'dry',
  below: (temperature: string) => `below ${temperature}`,
  retest: (months: number, names: readonly string[]) =>
    `after ${counted(months, 'month')}${names.length > 0 ? `: ${list(names)}` : ''}`,
  declared: {
    origin: 'Origin',
    substances: 'Substances of concern',
    nothing: 'Nothing is declared.',
    basis: (basis: string, on: string, by: string) =>
      `Basis: ${basis}. Declared on ${date(on)} by the ${by}.`
  },
  history: {
    first: 'First revision.',
    nothing: 'Nothing that is said here.',
    title: 'Title',
    description: 'Description',
    rule: 'Decision rule',
    precautions: 'Precautionary statements',
    basis: 'Basis of the classification',
    dust: 'Dust',
    transport: 'Transport',
    dusts: { combustible: 'combustible', 'not combustible': 'not combustible' },
    noLimit: 'no limit',
    byMethod: (text: string, method: string) => `${text}, by ${method}`,
    statedAsTypical: (title: string) => `${title}, stated as typical`,
    declared: (about: string) => `Declared, ${about.toLowerCase()}`,
    differs: (what: string) => `${what}: the text differs.`,
    leftOut: (what: string) => `${what}: left out.`,
    added: (what: string) => `${what}: added.`
  },
  article: {
    none: (isRecorded: boolean) =>
      `No competent person’s statement that this foil is an article is ${isRecorded ? 'in force' : 'recorded'}: whether it has to be classified and labelled as a mixture is open.`,
    taken: (clause: string, statement: string) =>
      `Taken as an article, outside the rules that classify substances and mixtures (${clause}). ${statement}`,
    atMost: (title: string, most: string) => `${title} at most ${most}`,
    noCondition:
      'What water leaches out of it, or acid left in it, may overturn this: the statement names no limit for either.',
    condition: (limits: readonly string[]) =>
      `It holds while what leaches out stays low, which each lot is held to: ${list(limits)}.`
  }
}
