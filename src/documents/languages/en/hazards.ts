/** A lot's hazards in English: what was found, on what it rests, what is open. */

import { pictogramTitles } from '../../../figures/pictograms.ts'
import { cited } from '../../../hazards/clauses.ts'
import type { Clause } from '../../../hazards/clauses.ts'
import type { DustText } from '../../../hazards/dust.ts'
import { type Edition, editionNames } from '../../../hazards/editions.ts'
import { explainClass, explainConflict } from '../../../hazards/explain.ts'
import type { Conflict, Classified } from '../../../hazards/classify.ts'
import type { Omission } from '../../../hazards/label-elements.ts'
import type { Form } from '../../../hazards/substances.ts'
import type { HazardDecision } from '../../../judge/lot-hazards.ts'
import { capital } from '../../capital.ts'
import { date, datesIn, list } from './numbers.ts'

const TRANSPORT =
  'Transport: no classification has been determined by this document; ask a dangerous-goods safety adviser.'

/** A sentence on dust, whatever the form: the law's own text says which. */
export const dust = ({ signal, text, because, clause }: DustText): string =>
  `United States: ${signal}. ${text} ${capital(because)}; ${datesIn(cited(clause))}.`

export const hazards = {
  /** A class as it is called: codes of the law, and words of its own beside them. */
  className: (name: string) => name,
  pictograms: pictogramTitles,
  /** A source, and how surely it was read. */
  cited: (clause: Clause) => datesIn(cited(clause)),
  /** The wording of statements, as papers name it. */
  wording: datesIn,
  editions: editionNames as Readonly<Record<Edition, string>>,
  /** Said beside every hazard block. */
  aid: 'An aid for handling, not a legal classification and no safety data sheet: the supplier’s sheet, test data, local rules and competent persons decide.',
  basis: (basis: string, chosen: string, aid: string) => `${basis}. ${chosen}${aid}`,
  chosen: (by: string, because: string) =>
    `Precautionary statements chosen by the ${by}: ${because}. `,
  ofEdition: (names: readonly string[], isOpen: boolean) =>
    names.length > 0
      ? `${list(names)}${isOpen ? ', as far as is known' : ''}.`
      : isOpen
        ? 'No class so far; the classification is incomplete.'
        : 'Not classified.',
  why: (one: Classified) => explainClass(one).map(datesIn),
  conflict: (one: Conflict) => datesIn(explainConflict(one)),
  omitted: (text: Omission) => `${text}.`,
  /** What nobody decided yet; the sentence is for who may read the figures. */
  open: (_about: HazardDecision['about'], text: string | undefined) =>
    `Open: ${text ?? 'a competent person has to decide'}.`,
  unknown: (percent: number, form: Form) =>
    `${percent} % of the mixture consists of ingredients of unknown acute toxicity (${form}).`,
  noneComputed: ({ source }: Clause) =>
    `Nothing is computed: foil is an article, outside the rules for substances and mixtures: ${source}.`,
  computed: (names: readonly string[], isOpen: boolean) =>
    names.length > 0
      ? `Computed for this lot: ${list(names)}${isOpen ? ', as far as is known' : ''}.`
      : isOpen
        ? 'Computed for this lot: no class so far; the classification is incomplete.'
        : 'Computed for this lot: not classified under CLP.',
  input: (title: string, value: string, U: string | undefined) =>
    `${title}: ${value}${U === undefined ? '' : ` (U ${U})`}.`,
  freeAcid: 'Free acid counts as sulfuric acid; acid bound between the layers is not free.',
  rest: (ec: string, clause: Clause) =>
    `The rest counts as expandable graphite, EC ${ec}: ${cited(clause)}.`,
  decided: (
    { on, by, because, about }: Pick<HazardDecision, 'on' | 'by' | 'because' | 'about'>,
    outcome: string | undefined
  ) =>
    `Decided on ${date(on)} by the ${by} about ${topics[about]}${outcome === undefined ? '' : ` (${outcome})`}: ${because}.`,
  phHolds: 'the pH holds',
  limitsHold: 'the concentration limits hold',
  notHeld: (names: readonly string[]) =>
    `The producer’s own classification does not hold ${list(names)}; the label here does.`,
  beyond: (names: readonly string[]) =>
    `The producer declares ${list(names)} beyond what is computed, on the side of caution.`,
  agreesOnNone: 'The producer declares no class, and none is computed.',
  agrees: 'The producer’s own classification holds every class computed.',
  dust: (said: DustText, _form: 'dust' | 'pieces') => dust(said),
  article: (
    said: { function: string; on: string; until?: string | undefined },
    statement: string,
    basis: string
  ) =>
    `Stated by a ${said.function} on ${date(said.on)}${said.until === undefined ? '' : `, valid until ${date(said.until)}`}: ${statement}. Basis: ${basis}.`,
  noTransport: TRANSPORT,
  earlierTransport: (until: string) =>
    `${TRANSPORT} An earlier decision was valid until ${date(until)}.`,
  transport: (
    { function: by, on, until }: { function: string; on: string; until: string },
    decision: string,
    basis: string
  ) =>
    `Transport: ${decision}. Decided by a ${by} on ${date(on)}, valid until ${date(until)}, on this basis: ${basis}.`
}

const topics: Record<HazardDecision['about'], string> = {
  oxidising: 'oxidising residues',
  metals: 'corrosion of metals',
  flammable: 'flammability',
  'limit or ph': 'concentration limit and pH',
  filtrate: 'free acid and pH of one filtrate',
  'missing data': 'missing data',
  declaration: 'the declared classification',
  article: 'what it is'
}
