/**
 * What readers see, worded and rounded once.
 *
 * HTML, PDF and data files render these documents and add only layout: `printed` is what a person
 * reads, `exact` what a program reads. Everything here is a text ready to show, so that no renderer
 * can round, and two renderers cannot disagree.
 */

import type { VisualVerdict } from '../judge/visual.ts'
import type { StandingDemand } from '../judge/visual-demand.ts'
import type { VerdictWord } from '../quality/judge.ts'
import type { PaperLanguage } from '../records/schemas/common.ts'
import type { BoardDocument } from './board-types.ts'
import type { Budgets } from './budgets.ts'
import type { ChoiceKind } from './choice-types.ts'
import type { GradeDocument } from './grade-types.ts'
import type { HazardText, ReasonedClass } from './hazard-types.ts'
import type { IssuedPaper } from './issued-paper.ts'
import type { LabelDocument } from './label-types.ts'
import type { Answer, Fact, LotListPage, LotShelf, LotSummary, StatusText } from './list-types.ts'
import type { News } from './news-types.ts'
import type { PanelLink, PanelsDocument, ScreeningText } from './panel-types.ts'
import type { PictureText } from './picture-types.ts'
import type { ReportText } from './report-text.ts'
import type { Figure, LimitText, MethodText, ProducerText, Table, UnitText } from './text-types.ts'
import type { ChartText, StandingText, WatchDocument } from './watch-types.ts'
import type { StatementDocument } from './statement-types.ts'
import type { FieldText, Working } from './working-types.ts'

/** Which of three words a row stands under; they are never mixed. */
export type Basis = 'measured' | 'typical' | 'not measured'

export type { Figure, LimitText, MethodText, ProducerText, Table, UnitText } from './text-types.ts'
export type { FieldText, Working } from './working-types.ts'
export type { GradeDocument } from './grade-types.ts'
export type {
  ComputedHazards,
  HazardEdition,
  HazardText,
  PictogramText,
  ReasonedClass
} from './hazard-types.ts'
export type {
  Answer,
  Fact,
  KeyFigure,
  LotListPage,
  LotShelf,
  LotSummary,
  StatusText
} from './list-types.ts'
export type { VerdictWord }

export interface VerdictText {
  readonly word: VerdictWord
  /** Why, in one sentence with the figures: for a reader who asks. */
  readonly sentence: string
  /** Probability that the true value meets the limit, in %. */
  readonly probability?: Figure
}

/** Where a limit holds for each sheet or reading: the one that decides, and its own figure. */
export interface DecidingFigure {
  /** 'sheet 3'; 'sheet 3, position 2'. */
  readonly place: string
  /** Sheets or readings it was found among. */
  readonly count: number
  readonly value: Figure
  readonly expandedUncertainty: Figure
  /** 'sheet 3, 0.94 g/cm³ ± 0.02 g/cm³' */
  readonly printed: string
}

/** One property on a lot page or certificate. */
export interface ResultRow {
  /** 'expansion-volume': anchor in pages, key in data. */
  readonly key: string
  readonly title: string
  readonly meaning: string
  readonly basis: Basis
  readonly unit: UnitText
  readonly method?: MethodText
  readonly testedOn?: string
  /** Readings or sheets behind the figure. */
  readonly n?: number
  /** '262'; '< 0.02' below the reporting limit; absent when not measured. */
  readonly value?: Figure
  /** True where the figure is an upper bound, not a value. */
  readonly below?: boolean
  readonly standardUncertainty?: Figure
  readonly expandedUncertainty?: Figure
  readonly coverageFactor?: Figure
  /** 'unlimited' where infinite. */
  readonly degreesOfFreedom?: Figure
  /** Present where the figure was measured elsewhere: it is marked wherever it prints. */
  readonly report?: ReportText
  /** Scatter between sheets, kept apart from the uncertainty of measurement, as a sentence. */
  readonly spread?: string
  readonly limit?: LimitText
  readonly verdict?: VerdictText
  /** Present where the verdict is that on a single figure, and `value` the mean of all. */
  readonly decidedBy?: DecidingFigure
}

export interface ChainLink {
  readonly lot: string
  /** 'expandable flake', 'furnace run', 'foil'. */
  readonly kind: string
  readonly made: string
  /** Lots of the same chain that it was made from, directly or by way of some that are not shown. */
  readonly from?: readonly string[]
  /** Address of its page, relative to the site's root; absent where there is none to see. */
  readonly url?: string
}

/** The parts of a lot that any edition shows. */
export interface LotDocument {
  readonly lot: string
  /** 'expandable flake', 'foil'. */
  readonly kind: string
  readonly url: string
  /** Absent for furnace runs, which are made to no grade. */
  readonly grade?: {
    readonly id: string
    readonly title: string
    readonly revision: string
    readonly url: string
  }
  readonly made: string
  readonly status: StatusText
  /** 'Meets all 4 limits of grade flake-50, revision 2.' */
  readonly answer: Answer
  readonly facts: readonly Fact[]
  /** Of panels painted with it, where its grade opens them. */
  readonly screening?: ScreeningText
  readonly results: readonly ResultRow[]
  readonly decisionRule: string
  /** In English alone: elsewhere the paper with all of them is linked. */
  readonly workings: readonly Working[]
  /** Thickness over the sheets, where it was read at known places and workings are shown. */
  readonly field?: FieldText
  /** Figures that lie on one curve, where results are shown. */
  readonly curves?: readonly ChartText[]
  readonly chain: readonly ChainLink[]
  readonly traceability: readonly string[]
  readonly hazards?: HazardText
  /** Of foil that was looked at. */
  readonly visual?: VisualVerdict
  /** What its grade asks to be looked at, where results are shown. */
  readonly visualDemand?: StandingDemand
  /** Of the classes computed; absent where results are not shown. */
  readonly hazardReasons?: readonly ReasonedClass[]
  readonly cautions: readonly string[]
  readonly papers: readonly Paper[]
  readonly notices: readonly string[]
}

/** A file that goes with a lot. */
export interface Paper {
  readonly title: string
  /** Relative to the site's root. */
  readonly url: string
  readonly mediaType: string
}

/** What only the workshop edition adds to a lot. */
export interface ProcessDocument {
  readonly facts: readonly Fact[]
  readonly charge?: Table
  readonly steps?: Table
  /** Where a batch's uptake is known: what filled stages would hold. */
  readonly filledStages?: Table
  /** For blends: what the parts lead one to expect. */
  readonly expected?: Table
  readonly results: readonly ResultRow[]
  readonly workings: readonly Working[]
  readonly materials: readonly ChainLink[]
  /** What went in, what was made, who was sent some, where the rest is. */
  readonly trace: readonly Table[]
  readonly notices: readonly string[]
}

/** A certificate, or the preview of one where none was issued. */
export interface CertificateDocument {
  readonly title: string
  readonly lot: string
  /** Absent on a preview. */
  readonly number?: string
  readonly revision?: string
  readonly issued?: string
  /** On a later revision: what it replaces, and why. */
  readonly amends?: string
  /** What differs from the revision before, one sentence a difference; computed, never typed. */
  readonly changes?: readonly string[]
  readonly preview: boolean
  /** Text across each page of what is not, or no longer, to be relied on: 'Preview, not issued'. */
  readonly mark?: string
  readonly language: PaperLanguage
  readonly paper: 'A4' | 'Letter'
  /** Date that stands for the document's age; never the clock. */
  readonly dated: string
  readonly producer: ProducerText
  /** Lot, product, grade and revision, dates, sampling, packing. */
  readonly facts: readonly Fact[]
  readonly answer: Answer
  readonly results: readonly ResultRow[]
  readonly notMeasured: readonly string[]
  readonly decisionRule: string
  readonly release: StatusText
  readonly signatory?: string
  readonly hazards?: HazardText
  readonly cautions: readonly string[]
  readonly traceability: readonly string[]
  /** What the document is and is not. */
  readonly statements: readonly string[]
  /** The lot's address on the site, if the producer has one. */
  readonly url?: string
}

/** One issued revision of a certificate, as it stands. */
export interface RevisionText {
  readonly title: string
  readonly revision: string
  /** '24 March 2026', and the same as YYYY-MM-DD. */
  readonly issued: string
  readonly dated: string
  readonly signatory: string
  /** Of what the paper says, where it is not the page's. */
  readonly language?: { readonly code: string; readonly name: string }
  readonly state: 'current' | 'superseded' | 'withdrawn'
  /** How it came to stand so, with day and reason. */
  readonly standing: string
  /** What the lot was found to be on that day; absent where its grade keeps that to itself. */
  readonly answer?: LotDocument['answer']
  /** Four groups of four digits, to compare by eye. */
  readonly fingerprint: string
  /** 'Signed with key … on …', or that it is not signed. */
  readonly signature: string
  /** Why the revision was made, and what differs from the one before; none in the first. */
  readonly reason?: string
  readonly changes: readonly string[]
  readonly papers: readonly Paper[]
}

/** A certificate's own page: every revision of it, newest first. */
export interface CertificatePage {
  readonly number: string
  readonly lot: string
  /** Absent where the lot has no page in this edition. */
  readonly lotUrl?: string
  readonly url: string
  readonly notices: readonly string[]
  readonly revisions: readonly RevisionText[]
}

/** The register as a page tells it. */
export interface RegisterText {
  readonly sentence: string
  /** Lines entered, and the root over them in hexadecimal digits. */
  readonly size: string
  readonly root: string
  readonly keys: readonly { readonly id: string; readonly from: string; readonly until: string }[]
  readonly papers: readonly Paper[]
}

/** The whole site in one edition. */
export interface SiteDocument {
  readonly language: PaperLanguage
  /** Where its pages stand: '' for the root, 'de/' below it. Files stand at the root in any language. */
  readonly folder: string
  /** The same pages in other languages. */
  readonly others: readonly {
    readonly language: PaperLanguage
    /** In the language itself: 'Deutsch'. */
    readonly name: string
    readonly folder: string
  }[]
  /**
   * The site in the languages its pages are in, the first at the root; the site itself where nothing is
   * said. What is written beside pages is always this one's.
   */
  readonly forms?: readonly SiteDocument[]
  readonly edition: 'public' | 'workshop'
  readonly producer: ProducerText
  /** The day the pages are as of, YYYY-MM-DD. */
  readonly asOf: string
  /** The lots' lines in lists, newest first, one for each page in `lots`. */
  readonly summaries: readonly LotSummary[]
  /** The lots in plain lists: by year, latest first, and by grade. */
  readonly years: readonly LotShelf[]
  readonly byGrade: readonly LotShelf[]
  /** Every page of these lists. */
  readonly lists: readonly LotListPage[]
  /** States that lots here are in. */
  readonly states: readonly string[]
  /** Made when read and not kept: take what is needed of a page, and let go of it. */
  readonly lots: readonly LotPage[]
  readonly grades: readonly GradeDocument[]
  /** From needs to these grades, a table a kind. */
  readonly choice: readonly ChoiceKind[]
  /** The state of the workshop: one in its own edition, none in the public one. */
  readonly boards: readonly BoardDocument[]
  /** Figures lot by lot, a page a grade; made when read and not kept. */
  readonly watches: readonly WatchDocument[]
  /** Coating panels beside each other: one in the workshop's edition where there are any, else none. */
  readonly panels: readonly PanelsDocument[]
  /** A page a panel; made when read and not kept. */
  readonly panelPages: readonly PanelDocument[]
  readonly drafts: readonly { readonly lot: string; readonly missing: readonly string[] }[]
  /** Certificates issued, newest first, and the register they stand in; none where none was issued. */
  readonly certificates: readonly CertificatePage[]
  readonly register?: RegisterText
  /** In the public edition of a producer with a site. */
  readonly news?: News
}

/** One coating panel, in the workshop edition alone. */
export interface PanelDocument {
  readonly number: string
  readonly url: string
  readonly dataUrl: string
  /** 'S1: own coating'. */
  readonly title: string
  readonly made: string
  /** What such a figure is not. */
  readonly warning: string
  readonly notices: readonly string[]
  readonly facts: readonly Fact[]
  /** Its flake and the bare panels it is held against. */
  readonly links: readonly PanelLink[]
  readonly results: readonly ResultRow[]
  /** The same without the method that all share. */
  readonly rows: readonly ResultRow[]
  readonly workings: readonly Working[]
  readonly charts: readonly ChartText[]
  readonly log?: Table
}

/** A paper that goes with a lot. */
export interface CertificatePaper {
  readonly document: CertificateDocument
  readonly url: string
  /** Of a certificate that was issued; absent on a preview. */
  readonly issued?: IssuedPaper
}

/** A label that goes with a lot. */
export interface LabelPaper {
  readonly document: LabelDocument
  readonly url: string
}

/** One lot with everything that is written for it. */
export interface LotPage {
  readonly summary: LotSummary
  readonly document: LotDocument
  readonly process?: ProcessDocument
  /** Latest certificate, or the preview; older revisions follow. None for furnace runs. */
  readonly certificates: readonly CertificatePaper[]
  /** How its figures came about, on paper; absent where an edition does not show it. */
  readonly statement?: { readonly document: StatementDocument; readonly url: string }
  /** Of the containers its grade names; in the workshop edition, of what may be labelled. */
  readonly labels?: readonly LabelPaper[]
  readonly dataUrl: string
  /**
   * Text of the data each certificate carries: the public part, whatever the edition, and of the chain
   * what was there when the lot was made.
   */
  readonly attachment?: string
  /** The datasheet of its grade as that now is; absent where the edition has none. */
  readonly datasheet?: Paper
  /** What the figures are uncertain by; absent where an edition does not show how they came about. */
  readonly budgets?: Budgets
  /** Photographs and micrographs, as far as an edition shows them. */
  readonly pictures?: readonly PictureText[]
  /** Its place among the lots of its grade; no paper has it, as it changes with every lot. */
  readonly standing?: StandingText
}
