/** What evaluation makes of a lot's record: figures with their uncertainty and their working. */

import type { Sieve } from '../metrology/sieves.ts'
import type { Estimate, InputLine } from '../metrology/estimate.ts'
import type {
  Batch,
  Content,
  Entry,
  Expansion,
  Foil,
  Method,
  Panel,
  Records
} from '../records/types.ts'
import type { FieldPath } from '../problem.ts'
import type { QuantityName } from '../quantities.ts'
import type { Note } from './notes.ts'

/** Head of a column of readings, as each language can word it; a sieve is what lies on it. */
export type Column = ColumnName | Sieve

export type ColumnName =
  | 'Absolute pressure at the start'
  | 'After'
  | 'Along one edge'
  | 'Along the next'
  | 'At the end'
  | 'BaSO₄'
  | 'Before'
  | 'Charged'
  | 'Conductivity'
  | 'Current'
  | 'Diffusivity'
  | 'Dish'
  | 'Dry'
  | 'Highest force'
  | 'In the extract'
  | 'Length'
  | 'Mass'
  | 'Pan'
  | 'Reading'
  | 'Resistance'
  | 'Sheet'
  | 'Stretch at the end'
  | 'Stretch when tightened'
  | 'Temperature'
  | 'Temperature at the start'
  | 'Thickness'
  | 'Thickness at each position'
  | 'Time'
  | 'Titre'
  | 'Under preload'
  | 'Under total load'
  | 'Unloaded'
  | 'Voltage'
  | 'Volume'
  | 'Width'
  | 'at the end'
  | 'pH'

/** A reading as it was written, or several read alike. */
export type Cell = string | readonly string[]

/** A table of readings as they were written. */
export interface WrittenReadings {
  readonly columns: readonly Column[]
  readonly rows: readonly (readonly Cell[])[]
}

/** Readings over one sheet, each where it was taken. */
export interface SheetField {
  /** 'sheet 1'. */
  readonly label: string
  readonly length_mm: number
  readonly width_mm: number
  /** The same as written, unit included. */
  readonly length: string
  readonly width: string
  readonly readings: readonly {
    readonly x_mm: number
    readonly y_mm: number
    readonly thickness_mm: number
    /** Digits as written. */
    readonly decimal: string
    /** Above the plane through the readings; absent where these tell none. */
    readonly above_mm?: number
  }[]
  /** Rise from end to end, and from edge to edge. */
  readonly along_mm?: Estimate
  readonly across_mm?: Estimate
}

/** How a figure came about. */
export interface Trace {
  readonly formula: string
  readonly source: string
  readonly readings?: WrittenReadings
  /** Inputs of the model, of the first reading where there are several. */
  readonly inputs: readonly InputLine[]
  /** Whose inputs those are: 'reading 1', 'sheet 1'; absent for a single set. */
  readonly inputsOf?: string
  /** Instrument behind an input, by the input's name. */
  readonly instrumentOf: Readonly<Record<string, string>>
  /** Those of the process are sentences in English. */
  readonly notes: readonly (Note | string)[]
  /** Of thickness read at known places. */
  readonly field?: readonly SheetField[]
}

/** Who found a figure that comes without readings, and what their report says of it, digits as printed there. */
export interface Report {
  readonly number: string
  readonly date: string
  /** As customers read it: the laboratory's name only where it may be public. */
  readonly by: string
  /** Measured by the workshop itself, before these records. */
  readonly isOwn?: true
  readonly value: string
  readonly expandedUncertainty?: string
  readonly coverageFactor?: string
  /** Why the report states no uncertainty. */
  readonly withoutUncertainty?: string
  readonly method?: string
  readonly scope?: string
  readonly sha256?: string
}

/** What is said beside a figure, as the parts any language can word. */
export type Remark =
  | { readonly is: 'soaked'; readonly time: string; readonly at: string }
  | { readonly is: 'held'; readonly time: string; readonly at: string }
  | { readonly is: 'defined'; readonly as: string; readonly rate?: string }
  | { readonly is: 'cut'; readonly direction: 'along' | 'across' }
  | { readonly is: 'clamped'; readonly with: string; readonly time: string; readonly at: string }
  | {
      readonly is: 'leaked'
      readonly gas: 'nitrogen' | 'helium' | 'methane'
      readonly pressure: string
      readonly stress: string
      readonly at: string
    }
  | { readonly is: 'heat flowed'; readonly direction: 'along' | 'across'; readonly at: string }
  | { readonly is: 'heat estimated'; readonly direction: 'along' | 'across'; readonly at: string }
  | { readonly is: 'spliced'; readonly at: readonly string[]; readonly longest: string }
  | { readonly is: 'from report'; readonly by: string; readonly number: string }
  /** Of the process: worded in English alone, as its pages are. */
  | { readonly is: 'process'; readonly text: string }

/** One figure of a lot. */
export interface Result {
  readonly quantity: QuantityName
  readonly estimate: Estimate
  /** Readings, or sheets, behind it. */
  readonly n: number
  readonly method?: Method
  readonly tested?: string
  readonly deviation?: string
  /** Single figures, where a limit can hold for each: sheets or readings. */
  readonly each: readonly { readonly label: string; readonly estimate: Estimate }[]
  /** Single readings below sheets; the same as `each` where there are no sheets. */
  readonly readings: readonly { readonly label: string; readonly estimate: Estimate }[]
  /** Reporting limit, where the figure lies below it. */
  readonly below?: number
  /** Present where no readings are known: measured elsewhere or earlier, and marked so wherever it prints. */
  readonly report?: Report
  /** What an outside laboratory reported beside our own figure. */
  readonly compared?: Result
  /** What belongs to the figure: what it holds for, how it was come by. */
  readonly remark?: Remark
  /** Where in the record it stands. */
  readonly field: FieldPath
  /** Worked out where a page shows it: most runs read figures alone. */
  readonly trace: () => Trace
}

export type Results = Partial<Record<QuantityName, Result>>

/** An instrument used on a day when its calibration was out of date. */
export interface OverdueUse {
  readonly instrument: string
  readonly due: string
  readonly used: string
  readonly field: FieldPath
}

/** Lots, each with its figures; product figures may be public, process figures never are. */
interface Evaluated<KindName extends string, Kind> {
  readonly kind: KindName
  readonly lot: string
  readonly entry: Entry<Kind>
  readonly product: Results
  readonly process: Results
  readonly instruments: readonly string[]
  readonly overdue: readonly OverdueUse[]
  /**
   * What lots made from it reckon on with, in percent: yield of a batch, or of those it was blended
   * from; carbon recovered in a furnace run. Kept, as every lot down the chain asks for it.
   */
  readonly yieldSoFar_percent?: Estimate | undefined
}

export type EvaluatedBatch = Evaluated<'batch', Batch>
export type EvaluatedExpansion = Evaluated<'expansion', Expansion>
export type EvaluatedFoil = Evaluated<'foil', Foil>
export type EvaluatedLot = EvaluatedBatch | EvaluatedExpansion | EvaluatedFoil

/** A coating panel with its figures: never public. */
export interface EvaluatedPanel {
  readonly number: string
  readonly entry: Entry<Panel>
  readonly results: Results
  readonly instruments: readonly string[]
  readonly overdue: readonly OverdueUse[]
}

export interface EvaluatedLots<Kind extends Records = Content> {
  readonly content: Kind
  readonly lots: ReadonlyMap<string, EvaluatedLot>
}

export interface EvaluatedContent<Kind extends Records = Content> extends EvaluatedLots<Kind> {
  readonly panels: ReadonlyMap<string, EvaluatedPanel>
}
