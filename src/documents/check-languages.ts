/** What a certificate's language lacks: found before anything is frozen, so that no paper mixes two. */

import type { JudgedLot } from '../judge/types.ts'
import { type Problem, problemAt, quoted } from '../problem.ts'
import type { PaperLanguage } from '../records/schemas/common.ts'
import type { CertificateOrder, Content, Entry, Records } from '../records/types.ts'
import { certificateDocument } from './certificate.ts'
import { catalogues } from './languages/index.ts'
import { homeLanguage, languageOf, tongueFor } from './languages/records.ts'
import type { Lack } from './languages/tongue.ts'
import { viewLot } from './lot-view.ts'

/**
 * Every text that a certificate needs in its language and that nobody has written, each told once; and
 * certificates that change their language with a revision.
 */
export function checkLanguages(records: Records, lots: ReadonlyMap<string, JudgedLot>): Problem[] {
  const { certificates, producer } = records
  if (!producer) return []
  const content: Content = { ...records, producer }
  const told = new Set<string>()
  return certificates.flatMap((entry, index) => {
    const lot = lots.get(entry.record.lot)
    const lacking = lot ? lackingIn(content, entry.record, lot) : []
    const fresh = lacking.filter(({ text }) => !told.has(`${languageOf(entry.record)} ${text}`))
    for (const { text } of fresh) told.add(`${languageOf(entry.record)} ${text}`)
    return [
      ...changedLanguage(entry, certificates[index - 1]?.record),
      ...fresh.map(lack => lackOf(entry, lack))
    ]
  })
}

/** What was frozen in one language cannot be compared with what is worded in another. */
function changedLanguage(
  entry: Entry<CertificateOrder>,
  before: CertificateOrder | undefined
): Problem[] {
  const { number, revision } = entry.record
  const [language, earlier] = [languageOf(entry.record), before && languageOf(before)]
  return before?.number !== number || language === earlier
    ? []
    : [
        problemAt(
          entry.at(['language']),
          'NOT_CERTIFIABLE',
          `revision ${revision} of ${number} is in ${nameOf(language)}, and the one before in ${nameOf(languageOf(before))}`,
          'a certificate keeps its language: issue one in another under a number of its own'
        )
      ]
}

const nameOf = (language: PaperLanguage): string => catalogues[language].name

function lackingIn(content: Content, order: CertificateOrder, lot: JudgedLot): Lack[] {
  const language = languageOf(order)
  if (language === homeLanguage(content) && language === 'en') return []
  const lacking = new Map<string, Lack>()
  const tongue = tongueFor(content, language, lack => lacking.set(lack.text, lack))
  const paper = content.producer.record.paper ?? 'A4'
  const view = viewLot(content, lot, [], tongue)
  certificateDocument(view, content.producer.record, order, { paper })
  return [...lacking.values()]
}

function lackOf(entry: Entry<CertificateOrder>, lack: Lack): Problem {
  const { number } = entry.record
  const { language, lacks, hint } = lackText(lack, languageOf(entry.record))
  return problemAt(
    entry.at(['language']),
    'MISSING_TEXT',
    `certificate ${number} is in ${language}, and ${lacks}`,
    hint
  )
}

/** What is missing of a language, and where to write it. */
export function lackText({ is, text }: Lack, language: PaperLanguage) {
  const told: Record<Lack['is'], readonly [lacks: string, hint: string]> = {
    text: [
      `nobody has translated ${quoted(text)}`,
      `add it to translations/${language}.yaml: - { text: ${inYaml(text)}, as: … }`
    ],
    statement: [
      `the statement ${text} has no text in it`,
      `add its words under 'fill-in-languages: { ${language}: … }' of the grade`
    ],
    edition: [
      `statements of the edition '${text}' have texts in English alone`,
      "take the edition out of the grade's 'editions:', or issue the certificate in English"
    ]
  }
  const [lacks, hint] = told[is]
  return { language: nameOf(language), lacks, hint }
}

/** A text as it may stand between braces. */
const inYaml = (text: string): string => `'${text.replaceAll("'", "''")}'`
