/** Invented labels that strain the layout, made from real statements. */

import type { LabelContent, LabelDocument } from '../../src/documents/label-types.ts'
import { labelWords } from '../../src/documents/label-words/index.ts'
import { isPictogram, pictogram } from '../../src/figures/pictograms.ts'
import type { ClassName } from '../../src/hazards/classes.ts'
import { labelElements } from '../../src/hazards/label-elements.ts'
import { labelMinima, type LabelProfile, labelSizes } from '../../src/hazards/label-size.ts'
import { choosePrecautions } from '../../src/hazards/precautions.ts'
import {
  type Language,
  shortWording,
  statementEdition,
  statementText
} from '../../src/hazards/statements.ts'

export interface Wanted {
  readonly classes: readonly ClassName[]
  readonly languages: readonly Language[]
  readonly profile: LabelProfile
  readonly capacity_L: number
  readonly names?: 'short' | 'long'
}

/** The law's text, its gap filled with words of some length where it has one. */
function textOf(code: string, language: Language): string {
  const plain = statementText(code, language)
  if (plain.ok) return plain.text
  const filled = statementText(code, language, 'Xxxxxxxxxx xxxxx xxxxxxxx xxxxxxx')
  if (!filled.ok) throw new Error(`${code} has no text in ${language}: ${filled.reason}`)
  return filled.text
}

const names = {
  short: {
    name: 'F-1',
    supplier: ['A. Bee', 'Cee 1', 'Tel. +1 555 0100'],
    url: 'https://a.example/lots/1/'
  },
  long: {
    name: 'flake-250-washed-three-times-and-sieved',
    supplier: [
      'Ossenfold and Quensthorp Graphite Workshop, Joint Association with Limited Liability',
      'Shed 4, Ossenfold Yard, Nether Quillam upon Brontsz, North Marlshire, Plutterkamp AB12 3CD',
      'Tel. +1 555 0142-0143'
    ],
    url: 'https://papers.ossenfold-graphite-workshop.example.org/lots/EB-26-012-a/'
  }
} as const

/** A label of a product of some classes. */
export function labelOf({
  classes,
  languages,
  profile,
  capacity_L,
  names: length = 'short'
}: Wanted): LabelDocument {
  const elements = labelElements(classes.map(name => ({ class: name })))
  const precautions = choosePrecautions(classes)
  const minima = labelMinima(capacity_L, profile)
  const { name, supplier, url } = names[length]
  const content: LabelContent = {
    name,
    product: languages.map(language => ({ language, text: labelWords[language].products.batch })),
    identifiers: ['CAS\u00a012777-87-6', 'EC\u00a0235-819-4'],
    pictograms: elements.pictograms.flatMap(code =>
      isPictogram(code) ? [{ code, ...pictogram(code) }] : []
    ),
    blocks: languages.map(language => {
      const words = labelWords[language]
      return {
        language,
        ...(elements.signal ? { signal: words.signals[elements.signal] } : {}),
        hazards: elements.statements.map(({ code }) => textOf(code, language)),
        precautions: precautions.map(code => textOf(code, language)),
        ...(length === 'long'
          ? {
              contains: `${words.contains}: ${Object.values(words.substances).slice(0, 4).join(', ')}`
            }
          : {}),
        storage: `${words.keepDry} ${words.keepBelow('40\u00a0°C')}`
      }
    }),
    facts: (['lot', 'quantity', 'made', 'retest'] as const).map((key, index) => ({
      label: [...new Set(languages.map(language => labelWords[language][key]))].join(' / '),
      text: ['EB-26-012-a', '150\u00a0g', '2026-08-25', '2027-08-25'][index]!
    })),
    supplier,
    wording: shortWording(statementEdition),
    code: { url, alt: labelWords[languages[0]!].qr(url) }
  }
  return {
    lot: 'EB-26-012-a',
    title: 'Label EB-26-012-a, pail of 5 L',
    subject: `profile ${profile}`,
    author: 'Ossenfold Graphite Workshop',
    dated: '2026-08-25',
    languages,
    minima,
    sizes_mm: labelSizes(minima),
    contents: [content],
    fileName: 'label.pdf'
  }
}

/** One of each kind of pictogram that can stand beside the others, and many statements. */
export const worst: readonly ClassName[] = [
  'Ox. Sol. 2',
  'Acute Tox. 3 oral',
  'Skin Corr. 1A',
  'Repr. 2',
  'Aquatic Chronic 1',
  'Met. Corr. 1'
]

/** Where a document is made in another process. */
export const sampleLabel = labelOf({
  classes: ['Eye Irrit. 2'],
  languages: ['de', 'fr'],
  profile: 'eu-2028',
  capacity_L: 5
})
