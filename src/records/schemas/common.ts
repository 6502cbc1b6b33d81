/** Parts that several kinds of record share. */

import * as z from 'zod'
import { quantities, type QuantityKey } from '../../quantities.ts'
import { date, fields, identifier, list, maybe, quantity, refuse, text, yesNo } from '../fields.ts'
import { sources } from './source.ts'

/** What an instrument is used for in a test; a method names one for each. */
export const roles = [
  'mass',
  'volume',
  'titre',
  'length',
  'thickness',
  'ph',
  'temperature',
  'conductivity',
  'force',
  'voltage',
  'current',
  'resistance',
  'photometer',
  'pressure',
  'diffusivity',
  'width'
] as const
export type Role = (typeof roles)[number]

/** Instruments by what they were used for. */
export const instrumentsByRole = z.partialRecord(z.enum(roles), identifier())

export const quantityKeys = Object.values(quantities).map(({ key }) => key) as [
  QuantityKey,
  ...QuantityKey[]
]

/** Whom a test or step is credited to; never public. */
export const person = text

/** A check made on the day: a buffer's slope, a check weight, a blank furnace. */
const dayCheck = fields({ what: text(), found: text(), within: yesNo() })

/** What stands at the head of every test. */
export const testHead = {
  tested: date(),
  method: maybe(identifier()),
  instruments: maybe(instrumentsByRole),
  by: maybe(person()),
  checks: maybe(list(dayCheck)),
  deviation: maybe(text()),
  sources: maybe(sources())
}

/** How the sample was taken. */
export const sampling = fields({
  on: maybe(date()),
  plan: maybe(text()),
  increments: maybe(text()),
  by: maybe(person()),
  retained: maybe(text()),
  'retained-mass': maybe(quantity('g', 'above 0'))
})

/** Something a lot was made from. */
export const usedLot = fields({ lot: identifier(), mass: quantity('g', 'above 0') })

/** States a lot can be given. One without any is in quarantine. */
export const states = [
  'quarantine',
  'released',
  'rejected',
  'concession',
  'withdrawn',
  'scrapped'
] as const

export const decision = fields({
  is: z.enum(states),
  on: date(),
  by: text(),
  because: maybe(text()),
  customer: maybe(text()),
  quantity: maybe(quantity('g', 'above 0')),
  until: maybe(date())
})

/** Judged by another grade from a day on; the lot number stays. */
export const regrading = fields({ to: identifier(), on: date(), by: text(), because: text() })

/** Overdue instruments cleared afterwards: found within tolerance when next calibrated. */
export const asFound = fields({
  instrument: identifier(),
  on: date(),
  found: text(),
  within: yesNo()
})

/** Systems of classification a paper can follow: European Union, UN GHS, United States. */
export const hazardEditions = ['clp', 'un', 'us'] as const

/** Languages that whole papers are worded in. */
export const paperLanguages = ['en', 'de'] as const
export type PaperLanguage = (typeof paperLanguages)[number]

/** Rules of size and type of a label. */
export const labelProfiles = ['eu-2028', 'eu-2015', 'us'] as const

/** Languages of statements beside English. */
export const hazardLanguages = ['de', 'fr', 'es', 'it'] as const

/**
 * How labels are made for a market: sizes by the European rules or those of the United States, statements
 * of CLP or of the UN at European sizes, and languages in their order.
 */
export const labelRules = fields({
  profile: z.enum(labelProfiles),
  wording: maybe(z.enum(['clp', 'un'])),
  languages: maybe(list(z.enum(['en', ...hazardLanguages])))
}).superRefine(({ profile, wording, languages = [] }, context) => {
  if (profile === 'us' && wording !== undefined)
    refuse(context, ['wording'], 'UNKNOWN_WORD', [
      `goes with European sizes: 'us' has statements of its own`,
      "take 'wording:' out, or write profile: eu-2028"
    ])
  const isEnglish = languages.every(language => language === 'en')
  if ((profile === 'us' || wording === 'un') && !isEnglish)
    refuse(context, ['languages'], 'MISSING_TEXT', [
      'statements of the UN and the United States are there in English alone',
      'take the other languages out'
    ])
})

/** What a competent person can decide on a lot's hazards. The reason is public. */
export const hazardTopics = [
  'oxidising',
  'metals',
  'flammable',
  'limit or ph',
  'filtrate',
  'missing data',
  'declaration'
] as const

/** What is known of a lot's hazards beyond its tests: residues found, and decisions with their reason. */
export const lotHazards = fields({
  residues: maybe(list(fields({ substance: text(), fraction: quantity('%', 'from 0 to 100') }))),
  decisions: maybe(
    list(
      fields({
        about: z.enum(hazardTopics),
        /** Which side holds, where concentration limit and pH disagree. */
        take: maybe(z.enum(['limits', 'ph'])),
        /** The class a test gave. */
        class: maybe(text()),
        by: text(),
        on: date(),
        because: text()
      }).superRefine(({ about, take }, context) => {
        if ((about === 'limit or ph') === (take !== undefined)) return
        refuse(context, [], take === undefined ? 'MISSING_FIELD' : 'INVALID_VALUE', [
          take === undefined
            ? "a decision between limit and pH needs 'take'"
            : "'take' belongs to a decision about 'limit or ph' alone",
          "write 'take: limits' or 'take: ph' beside 'about: limit or ph'"
        ])
      })
    )
  )
})

/** What every lot of our own making has. */
export const lotHead = {
  lot: identifier(),
  made: date(),
  draft: maybe(yesNo()),
  by: maybe(person()),
  notes: maybe(text()),
  instruments: maybe(instrumentsByRole)
}

/** What lay in stock at the end of a day, by the balance. */
export const stockCount = fields({
  on: date(),
  mass: quantity('g', 'at least 0'),
  by: maybe(person()),
  notes: maybe(text())
})

/** Names that are the same on every system, of the two kinds of file that every browser shows. */
const PICTURE_NAME = /^[A-Za-z0-9][A-Za-z0-9._-]*\.(?:jpe?g|png)$/iu

/** A photograph or micrograph; the file lies in pictures/ of the content folder. */
const picture = fields({
  file: text(),
  /** What is to be seen. */
  caption: text(),
  /** How wide the whole picture is in truth: a scale is drawn from it. */
  width: maybe(quantity('mm', 'above 0'))
}).superRefine(({ file }, context) => {
  if (!PICTURE_NAME.test(file))
    refuse(context, ['file'], 'INVALID_VALUE', [
      'must be the name of a JPEG or PNG file in pictures/',
      'write it as EB-26-006-worms.jpg: letters, digits, hyphens, dots, underscores'
    ])
})

export const lotTail = {
  pictures: maybe(list(picture)),
  sampling: maybe(sampling),
  status: maybe(list(decision)),
  regraded: maybe(list(regrading)),
  'as-found': maybe(list(asFound)),
  counted: maybe(list(stockCount))
}
