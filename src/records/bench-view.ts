/** A batch as far as it is written, draft or not: what a bench sheet starts from. */

import type { SourceFile } from '../problem.ts'
import { parseRecord } from './document.ts'

export interface BenchLine {
  readonly material: string
  readonly as: string
  /** Blank where none is named. */
  readonly container: string
  /** '150.0 g': what was planned, or what stands there as weighed. */
  readonly amount: string
}

export interface BenchView {
  readonly lot: string
  readonly grade: string
  readonly made: string
  readonly vessel: string
  readonly charge: readonly BenchLine[]
  readonly steps: readonly string[]
}

/** What the file says, blank where it says nothing; undefined where it cannot be read at all. */
export function benchView(file: SourceFile): BenchView | undefined {
  const document = parseRecord(file)
  if (!document.ok) return undefined
  const data = groupOf(document.value.data)
  return {
    lot: textOf(data.lot),
    grade: textOf(data.grade),
    made: textOf(data.made),
    vessel: textOf(data.vessel),
    charge: listOf(data.charge).map(line => ({
      material: textOf(line.material),
      as: textOf(line.as),
      container: textOf(line.container),
      amount: textOf(line.planned) || textOf(line.mass) || textOf(line.volume)
    })),
    steps: listOf(data.steps).flatMap(step => textOf(step.what) || [])
  }
}

type Group = Readonly<Record<string, unknown>>

const groupOf = (value: unknown): Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Group) : {}

const listOf = (value: unknown): Group[] => (Array.isArray(value) ? value.map(groupOf) : [])

const textOf = (value: unknown): string => (typeof value === 'string' ? value : '')
