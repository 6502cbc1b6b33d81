/** Lots in lists: a line for each, and the lists there are. */

import type { VerdictWord } from '../quality/judge.ts'
import type { LotState } from '../quality/status.ts'
import type { Fact } from './text-types.ts'

/** Whether a lot meets its grade, and why, or that this edition does not tell. */
export interface Answer {
  readonly word: VerdictWord | 'not judged' | 'not published'
  readonly sentence: string
}

export interface StatusText {
  readonly state: LotState | 'in process'
  /** 'Released on 18 March 2026 by the quality manager.' */
  readonly sentence: string
}

export type { Fact }

/** A line in the archive. */
export interface LotSummary {
  readonly lot: string
  readonly url: string
  readonly kind: string
  readonly grade: string
  readonly made: string
  readonly state: StatusText['state']
  readonly answer: Answer
  /** The grade's first limits: 'Expansion volume', '262.1 ± 4.3 mL/g'. */
  readonly key: readonly KeyFigure[]
}

/** One of a lot's chief figures. */
export interface KeyFigure extends Fact {
  /** The quantity's key. */
  readonly key: string
}

/** A page of a list of lots, such as those made in a year; long lists go over several. */
export interface LotListPage {
  readonly title: string
  /** What the list is of: 'Lots made in', 'Lots of grade'. */
  readonly kicker: string
  readonly url: string
  readonly lots: readonly LotSummary[]
  /** Counted from 1. */
  readonly page: number
  readonly pages: number
  /** Addresses of the list's other pages, as far as there are any. */
  readonly first?: string
  readonly previous?: string
  readonly next?: string
  readonly last?: string
}

/** A list of lots, as a link to it. */
export interface LotShelf {
  /** '2026'; 'flake-250'. */
  readonly name: string
  readonly title: string
  readonly url: string
  readonly count: number
}
