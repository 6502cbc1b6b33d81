/** The labels of a shipment's containers: those of the lot, for what each holds. */

import type { JudgedLot } from '../judge/types.ts'
import type { Content, Shipment } from '../records/types.ts'
import type { Issued } from './issued.ts'
import type { LabelDocument, LabelRules } from './label-types.ts'
import { inAll } from './label.ts'
import { labelDocuments } from './labels.ts'

type Part = Shipment['contents'][number]

export interface ContainerLabels {
  readonly labels: ReadonlyMap<string, LabelDocument>
  /** Why a container that needs a label can have none, a sentence each. */
  readonly missing: readonly string[]
}

/**
 * A label for each container of a kind that the lot's grade names; what goes bare, such as a sheet,
 * has none.
 */
export function containerLabels(
  content: Content,
  lot: JudgedLot,
  issued: readonly Issued[],
  { containers = [] }: Part,
  rules: LabelRules
): ContainerLabels {
  const labels = new Map<string, LabelDocument>()
  const missing: string[] = []
  for (const { number, kind, net_g } of containers) {
    const packed = lot.grade.containers?.find(one => one.kind === kind)
    if (!packed) continue
    const made = labelDocuments(content, lot, issued, {
      ...rules,
      containers: [{ ...packed, holds_g: net_g }]
    })
    missing.push(...made.problems.map(({ message }) => `container ${number}: ${message}`))
    for (const label of made.labels) labels.set(number, numbered(label, number))
  }
  return { labels, missing }
}

/** The number by which a recall asks for it. */
function numbered(label: LabelDocument, number: string): LabelDocument {
  const word = inAll(label.languages, ({ container }) => container)
  const contents = label.contents.map(content =>
    content.facts.length === 0
      ? content
      : { ...content, facts: [...content.facts, { label: word, text: number }] }
  )
  const named = { title: `${label.title}, ${number}`, fileName: `label-${number}.pdf` }
  return { ...label, ...named, contents }
}
