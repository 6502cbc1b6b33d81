/**
 * Statements that are worded otherwise since a certificate was issued. The certificate names the wording
 * it follows, so that it stands as it was issued: that is told, and is no difference of the records.
 */

import type { Edition } from '../hazards/editions.ts'
import { editionOfWording, editionText, type Wordings } from '../hazards/statements.ts'
import { type Problem, problemAt } from '../problem.ts'
import type { CertificateOrder, Entry } from '../records/types.ts'
import type { HazardText } from './hazard-types.ts'
import { listText } from './words.ts'

type Block = Pick<HazardText, 'edition' | 'statements'>

/** Wordings a paper names that are not today's; what this program never printed is not among them. */
export function wordingsIn(hazards: HazardText | undefined): Wordings {
  const found = new Map<Edition, string>()
  for (const { edition: wording } of blocksOf(hazards)) {
    const edition = editionOfWording(wording)
    if (edition && wording !== editionText(edition)) found.set(edition, wording)
  }
  return found
}

const blocksOf = (hazards: HazardText | undefined): readonly Block[] =>
  hazards ? [hazards, ...(hazards.editions ?? [])] : []

interface Reworded {
  readonly entry: Entry<CertificateOrder>
  readonly numbers: readonly string[]
  readonly wording: string
  /** Today's words by code. */
  readonly words: ReadonlyMap<string, string>
}

/** Certificates named before the rest is only counted. */
const NAMED = 3

export interface Rewordings {
  /**
   * @param then what the records come to now, in the wording of the certificate
   * @param now the same in today's wording
   */
  readonly note: (
    entry: Entry<CertificateOrder>,
    then: HazardText | undefined,
    now: HazardText | undefined
  ) => void
  /** One note a wording. */
  readonly problems: () => Problem[]
}

/** Keep what is found certificate by certificate. */
export function openRewordings(): Rewordings {
  const found = new Map<string, Reworded>()
  return {
    note: (entry, then, now) => {
      const today = blocksOf(now)
      for (const [index, block] of blocksOf(then).entries()) {
        const words = wordsChanged(block, today[index])
        if (words.length === 0) continue
        const { edition: wording } = block
        const known = found.get(wording) ?? { entry, numbers: [], wording, words: new Map() }
        found.set(wording, {
          ...known,
          numbers: [...known.numbers, entry.record.number],
          words: new Map([...known.words, ...words])
        })
      }
    },
    problems: () => [...found.values()].map(problemOf)
  }
}

/** Today's words of what is worded otherwise. */
function wordsChanged({ statements }: Block, today: Block | undefined): [string, string][] {
  const words = new Map(today?.statements.map(({ code, text }) => [code, text]))
  return statements.flatMap(({ code, text }): [string, string][] => {
    const now = words.get(code)
    return now === undefined || now === text ? [] : [[code, now]]
  })
}

function problemOf({ entry, numbers, wording, words }: Reworded): Problem {
  const more = numbers.length - NAMED
  const named = listText([...numbers.slice(0, NAMED), ...(more > 0 ? [`${more} more`] : [])])
  const told = [...words].map(([code, text]) => `${code} would now be worded '${text}'`)
  return problemAt(
    entry.at(['number']),
    'REWORDED',
    `${named}: issued in the wording of ${wording}; ${listText(told)}`,
    'nothing is wrong with them: they and their labels keep the words they were issued with, and a revision takes the new ones'
  )
}
