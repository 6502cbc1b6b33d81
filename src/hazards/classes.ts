/**
 * Hazard classes a graphite workshop can reach, with what the label carries for each.
 *
 * Source: CLP Annex I, tables of label elements at the end of each chapter (pictograms, signal words
 * and statements of the physical and health classes from memory where the chapter is not named in
 * clauses.ts). Categories of the UN GHS that CLP did not take over stand here too: editions.ts says which.
 */

export type Pictogram =
  'GHS02' | 'GHS03' | 'GHS04' | 'GHS05' | 'GHS06' | 'GHS07' | 'GHS08' | 'GHS09'

export type SignalWord = 'Danger' | 'Warning'

interface ClassEntry {
  /** Classes of one family exclude each other; the first listed is the most severe. */
  readonly family: string
  readonly pictogram?: Pictogram
  readonly signal?: SignalWord
  readonly statement: string
}

const row = (
  family: string,
  pictogram: Pictogram | undefined,
  signal: SignalWord | undefined,
  statement: string
): ClassEntry => ({
  family,
  ...(pictogram === undefined ? {} : { pictogram }),
  ...(signal === undefined ? {} : { signal }),
  statement
})

/** Physical, then health, then environmental; within a family the most severe first. */
export const classes = {
  'Flam. Gas 2': row('flammable gas', undefined, 'Warning', 'H221'),
  'Flam. Liq. 3': row('flammable liquid', 'GHS02', 'Warning', 'H226'),
  'Ox. Gas 1': row('oxidising gas', 'GHS03', 'Danger', 'H270'),
  'Ox. Liq. 1': row('oxidising liquid', 'GHS03', 'Danger', 'H271'),
  'Ox. Liq. 2': row('oxidising liquid', 'GHS03', 'Danger', 'H272'),
  'Ox. Liq. 3': row('oxidising liquid', 'GHS03', 'Warning', 'H272'),
  'Ox. Sol. 1': row('oxidising solid', 'GHS03', 'Danger', 'H271'),
  'Ox. Sol. 2': row('oxidising solid', 'GHS03', 'Danger', 'H272'),
  'Ox. Sol. 3': row('oxidising solid', 'GHS03', 'Warning', 'H272'),
  'Press. Gas': row('gas under pressure', 'GHS04', 'Warning', 'H280'),
  'Met. Corr. 1': row('metals', 'GHS05', 'Warning', 'H290'),
  'Acute Tox. 1 oral': row('acute oral', 'GHS06', 'Danger', 'H300'),
  'Acute Tox. 2 oral': row('acute oral', 'GHS06', 'Danger', 'H300'),
  'Acute Tox. 3 oral': row('acute oral', 'GHS06', 'Danger', 'H301'),
  'Acute Tox. 4 oral': row('acute oral', 'GHS07', 'Warning', 'H302'),
  'Acute Tox. 5 oral': row('acute oral', undefined, 'Warning', 'H303'),
  'Acute Tox. 1 dermal': row('acute dermal', 'GHS06', 'Danger', 'H310'),
  'Acute Tox. 2 dermal': row('acute dermal', 'GHS06', 'Danger', 'H310'),
  'Acute Tox. 3 dermal': row('acute dermal', 'GHS06', 'Danger', 'H311'),
  'Acute Tox. 4 dermal': row('acute dermal', 'GHS07', 'Warning', 'H312'),
  'Acute Tox. 5 dermal': row('acute dermal', undefined, 'Warning', 'H313'),
  'Acute Tox. 1 inhalation': row('acute inhalation', 'GHS06', 'Danger', 'H330'),
  'Acute Tox. 2 inhalation': row('acute inhalation', 'GHS06', 'Danger', 'H330'),
  'Acute Tox. 3 inhalation': row('acute inhalation', 'GHS06', 'Danger', 'H331'),
  'Acute Tox. 4 inhalation': row('acute inhalation', 'GHS07', 'Warning', 'H332'),
  'Acute Tox. 5 inhalation': row('acute inhalation', undefined, 'Warning', 'H333'),
  'Skin Corr. 1A': row('skin', 'GHS05', 'Danger', 'H314'),
  'Skin Corr. 1B': row('skin', 'GHS05', 'Danger', 'H314'),
  'Skin Corr. 1C': row('skin', 'GHS05', 'Danger', 'H314'),
  'Skin Corr. 1': row('skin', 'GHS05', 'Danger', 'H314'),
  'Skin Irrit. 2': row('skin', 'GHS07', 'Warning', 'H315'),
  'Skin Irrit. 3': row('skin', undefined, 'Warning', 'H316'),
  'Eye Dam. 1': row('eye', 'GHS05', 'Danger', 'H318'),
  'Eye Irrit. 2': row('eye', 'GHS07', 'Warning', 'H319'),
  'Resp. Sens. 1': row('respiratory sensitisation', 'GHS08', 'Danger', 'H334'),
  'Skin Sens. 1': row('skin sensitisation', 'GHS07', 'Warning', 'H317'),
  'Muta. 1B': row('mutagenic', 'GHS08', 'Danger', 'H340'),
  'Muta. 2': row('mutagenic', 'GHS08', 'Warning', 'H341'),
  'Carc. 1A': row('carcinogenic', 'GHS08', 'Danger', 'H350'),
  'Carc. 1B': row('carcinogenic', 'GHS08', 'Danger', 'H350'),
  'Carc. 2': row('carcinogenic', 'GHS08', 'Warning', 'H351'),
  'Repr. 1B': row('reproductive', 'GHS08', 'Danger', 'H360'),
  'Repr. 2': row('reproductive', 'GHS08', 'Warning', 'H361'),
  'STOT SE 1': row('one exposure', 'GHS08', 'Danger', 'H370'),
  'STOT SE 2': row('one exposure', 'GHS08', 'Warning', 'H371'),
  'STOT SE 3 airways': row('airways', 'GHS07', 'Warning', 'H335'),
  'STOT SE 3 narcotic': row('narcotic', 'GHS07', 'Warning', 'H336'),
  'STOT RE 1': row('repeated exposure', 'GHS08', 'Danger', 'H372'),
  'STOT RE 2': row('repeated exposure', 'GHS08', 'Warning', 'H373'),
  'Aquatic Acute 1': row('aquatic acute', 'GHS09', 'Warning', 'H400'),
  'Aquatic Acute 2': row('aquatic acute', undefined, undefined, 'H401'),
  'Aquatic Acute 3': row('aquatic acute', undefined, undefined, 'H402'),
  'Aquatic Chronic 1': row('aquatic chronic', 'GHS09', 'Warning', 'H410'),
  'Aquatic Chronic 2': row('aquatic chronic', 'GHS09', undefined, 'H411'),
  'Aquatic Chronic 3': row('aquatic chronic', undefined, undefined, 'H412'),
  'Aquatic Chronic 4': row('aquatic chronic', undefined, undefined, 'H413')
} as const satisfies Record<string, ClassEntry>

export type ClassName = keyof typeof classes

export const classNames = Object.keys(classes) as ClassName[]

/** What the label carries for a class. */
export const classEntry = (name: ClassName): ClassEntry => classes[name]

const places = new Map(classNames.map((name, place) => [name, place]))

/** Place in the list: physical first, and in a family the most severe first. */
export const placeOf = (name: ClassName): number => places.get(name) ?? -1

export const isClassName = (name: string): name is ClassName => Object.hasOwn(classes, name)

/** Whether two classes are of one family, and the first at least as severe as the second. */
export const covers = (one: ClassName, other: ClassName): boolean =>
  classes[one].family === classes[other].family && placeOf(one) <= placeOf(other)
