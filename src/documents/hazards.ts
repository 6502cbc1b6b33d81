/** The hazard block of a grade or lot: label elements with the law's own texts, and their reasons. */

import { isPictogram, pictogram } from '../figures/pictograms.ts'
import { type ClassName, isClassName } from '../hazards/classes.ts'
import { mostSevere } from '../hazards/findings.ts'
import { labelElements, type LabelElements } from '../hazards/label-elements.ts'
import type { Finding } from '../hazards/mixture.ts'
import { choosePrecautions } from '../hazards/precautions.ts'
import { statementEdition, statementText } from '../hazards/statements.ts'
import type { LotHazards } from '../judge/lot-hazards.ts'
import type { Grade } from '../records/types.ts'
import { computedHazards } from './computed-hazards.ts'
import type { HazardText, ResultRow } from './types.ts'

/** Said beside every hazard block. */
const AID =
  'An aid for handling, not a legal classification and no safety data sheet: the supplier’s sheet, test data, local rules and competent persons decide.'

const TRANSPORT =
  'Transport: no classification has been determined by this document; ask a dangerous-goods safety adviser.'

type Hazards = NonNullable<Grade['hazards']>

/** What goes on the label: what is declared and what is computed, the more severe of each family. */
export interface Label extends LabelElements {
  readonly classified: readonly ClassName[]
  readonly precautions: readonly string[]
}

/** Label elements of a grade, or of a lot of it. */
export function labelFor(hazards: Hazards, lot?: LotHazards): Label {
  const declared = hazards.classified.filter(isClassName)
  const found: Finding[] = mostSevere([
    ...declared.map((name): Finding => ({ class: name, reasons: [] })),
    ...(lot?.classification.classes ?? [])
  ])
  const classified = found.map(({ class: name }) => name)
  const chosen = hazards.precautions
  return {
    ...labelElements(found, lot?.classification.supplements),
    classified,
    precautions: choosePrecautions(classified, chosen ? { chosen } : {})
  }
}

/**
 * The block, for spreading into a document; nothing where the grade declares nothing.
 *
 * @param rows figures a reader of the document may see; without them reasons stay out
 */
export function hazardText(
  hazards: Grade['hazards'],
  lot?: LotHazards,
  rows: readonly ResultRow[] = []
): { hazards?: HazardText } {
  if (!hazards) return {}
  const label = labelFor(hazards, lot)
  const codes = [...label.statements, ...label.precautions.map(code => ({ code }))]
  return {
    hazards: {
      pictograms: label.pictograms.flatMap(code =>
        isPictogram(code) ? [{ code, ...pictogram(code) }] : []
      ),
      ...(label.signal === undefined ? {} : { signal: label.signal }),
      statements: codes.flatMap(({ code, fill }: { code: string; fill?: string }) => {
        const statement = statementText(code, 'en', hazards.fill?.[code] ?? fill)
        return statement.ok ? [{ code, text: statement.text }] : []
      }),
      classified: label.classified,
      basis: `${hazards.basis.replace(/\.$/u, '')}. ${AID}`,
      edition: statementEdition,
      ...(lot ? { computed: computedHazards(lot, label, rows) } : {}),
      transport: TRANSPORT
    }
  }
}
