/** What a datasheet says of hazards beyond the label, in English. */

import type { Clause } from '../../../hazards/clauses.ts'
import { certaintyTexts } from '../../../hazards/clauses.ts'
import type { Over } from '../../../hazards/exposure.ts'
import { dust } from './hazards.ts'

export const safety = {
  disclaimer:
    'What is said here of hazards was made from the records and the composition entered by the producer, using the classification rules and statement texts named beside it. It is an aid, not a legal classification, safety data sheet, permit, engineering design or transport declaration. Classification, labelling, exposure control, ventilation, fire and explosion protection, waste and transport must follow the law and codes in force where the material is made, carried, used and discarded, and be decided by competent, where required licensed, persons, such as a safety adviser, a dangerous-goods safety adviser, an occupational hygienist, a professional engineer, a poison centre or the local authority. Values called computed come from calculation, not from tests; where test data exist they prevail. No warranty of completeness is given.',
  exposureNote:
    'A national limit may be lower, and holds where the work is done. Threshold limit values of the ACGIH are not given here: ask for the current edition.',
  headings: {
    article: 'Article',
    handling: 'Handling',
    dust: 'Dust',
    incompatible: 'Never together with',
    gases: 'Gases that can come off',
    waste: 'Waste',
    carriage: 'Carriage'
  },
  exposure: {
    caption: 'Limits of exposure at work',
    columns: ['Of', 'Limit', 'Over', 'Issuer and year'] as readonly string[],
    over: {
      '8 h': '8 h',
      '15 min': '15 min',
      ceiling: 'ceiling',
      'any time': 'any time'
    } satisfies Record<Over, string>
  },
  excluded: 'A dust test excluded combustible dust.',
  dust,
  noClass:
    'The European Union has no such class; the limits of explosion of this dust are not known here.',
  /** A sentence, source, issuer or fraction of our own data files; undefined where nobody has worded it. */
  ofData: (text: string): string | undefined => text,
  certainty: certaintyTexts as Readonly<Record<Clause['sure'], string>>
}
