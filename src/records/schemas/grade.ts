/** A grade: what is promised of a lot, how it is judged, and what is said with it. */

import * as z from 'zod'
import type { Reading } from '../../metrology/written.ts'
import type { UnitName } from '../../metrology/units.ts'
import { quantities, type QuantityKey } from '../../quantities.ts'
import { quoted } from '../../problem.ts'
import { articleStatement } from './article.ts'
import { gradeHazards } from './grade-hazards.ts'
import {
  amount,
  condition,
  date,
  fields,
  identifier,
  list,
  maybe,
  refuse,
  text,
  whole,
  yesNo
} from '../fields.ts'
import { recipe } from './recipe.ts'
import { serviceTests } from './service.ts'
import { container, keeping } from './container.ts'
import { declarations } from './declarations.ts'
import { once } from '../once.ts'
import { perQuantity } from './per-quantity.ts'
import { quantityKeys } from './common.ts'
import { visualDemand } from './visual.ts'

/** What a limit holds for. Flake is judged by the lot mean alone. */
export const scopes = ['lot mean', 'every sheet', 'every reading'] as const

/** A limit in the unit of its quantity, with the digits it was written with. */
const limitIn = once((unit: UnitName) =>
  fields({
    min: maybe(amount(unit)),
    max: maybe(amount(unit)),
    target: maybe(amount(unit)),
    tolerance: maybe(amount(unit)),
    of: maybe(z.enum(scopes)),
    method: maybe(identifier()),
    places: maybe(whole(0))
  }).superRefine(checkBounds)
)

export type Limit = z.output<ReturnType<typeof limitIn>>

interface Bounds {
  readonly min?: Reading | undefined
  readonly max?: Reading | undefined
  readonly target?: Reading | undefined
  readonly tolerance?: Reading | undefined
}

/** A limit says min, max or both, or a target with its tolerance; never both ways at once. */
function checkBounds({ min, max, target, tolerance }: Bounds, context: z.RefinementCtx): void {
  const say = (field: string[], message: string, hint: string) =>
    refuse(context, field, 'INVALID_VALUE', [message, hint])
  if (!min && !max && !target)
    refuse(context, [], 'MISSING_FIELD', [
      'this limit has no bound',
      'write min, max, or target and tolerance'
    ])
  if (target && (min ?? max))
    say(['target'], 'stands beside min or max', 'write target and tolerance, or min and max')
  if (target && !tolerance)
    refuse(context, ['tolerance'], 'MISSING_FIELD', [
      'is missing: a target needs its tolerance',
      "add 'tolerance:' here"
    ])
  if (tolerance && !target)
    refuse(context, ['target'], 'MISSING_FIELD', [
      'is missing: a tolerance needs its target',
      "add 'target:' here, or write min and max"
    ])
  if (min && max && !(min.value < max.value))
    say(['max'], `must be above min, got ${max.written} against ${min.written}`, 'check the two')
  if (tolerance && !(tolerance.value > 0))
    say(
      ['tolerance'],
      `must be above 0, got ${quoted(tolerance.written)}`,
      'write it without a sign'
    )
}

/** Why a process figure has no limit, and what to do. */
const PROCESS = (key: string) =>
  [
    `'${key}' is a process figure, which customers never see, and can have no limit`,
    'take it out'
  ] as const

const howMeasured = fields({ method: maybe(identifier()), places: maybe(whole(0)) })

/** Limits one customer sets beyond those of the grade: of figures that customers see. */
export const customerLimits = perQuantity(limitIn).superRefine((limits, context) => {
  for (const { key, side } of Object.values(quantities))
    if (limits[key] && side === 'process') refuse(context, [key], 'INVALID_VALUE', PROCESS(key))
})

export const decisionRules = ['simple', 'rounded', 'guarded'] as const

/** Sections of a lot page that customers may see; whatever is not named here stays private. */
export const publicSections = [
  'results',
  'working',
  'chain',
  'sampling',
  'quantity',
  'panels',
  'pictures'
] as const

export const gradeRecord = fields({
  id: identifier(),
  revision: whole(1),
  'valid-from': date(),
  title: text(),
  kind: z.enum(['flake', 'foil']),
  description: text(),
  /** What it is made in: 'sheets of 100 mm by 100 mm'. */
  sizes: maybe(list(text())),
  declared: maybe(declarations),
  'decision-rule': maybe(z.enum(decisionRules)),
  limits: perQuantity(limitIn),
  measured: maybe(perQuantity(() => howMeasured)),
  /** Of foil: each lot has to be looked at, and is not released without it. */
  visual: maybe(visualDemand),
  typical: maybe(perQuantity(unit => amount(unit))),
  'not-measured': maybe(list(text())),
  /** Of foil: tests of the grade in service, as a laboratory reports them. */
  service: maybe(serviceTests),
  onset: maybe(condition('onset')),
  public: maybe(list(z.enum(publicSections))),
  /** Whether customers may see which of its lots are in stock; never how much. */
  'show-stock': maybe(yesNo()),
  /** Private: how it is charged. */
  recipe: maybe(recipe),
  packing: maybe(text()),
  storage: maybe(text()),
  /** What it is sold in, for the labels. */
  containers: maybe(list(container)),
  /** The same storage in a form labels can say in every language. */
  keep: maybe(keeping),
  'retest-after-months': maybe(whole(1)),
  /** Quantities that change with age: measured again before a lot is sent after that time. */
  retest: maybe(list(z.enum(quantityKeys))),
  'cas-number': maybe(text()),
  'safety-data-sheet': maybe(text()),
  hazards: maybe(gradeHazards),
  /** Of foil: why no mixture is classified. */
  article: maybe(articleStatement),
  cautions: maybe(list(text()))
}).superRefine((grade, context) => {
  checkLimits(grade, context)
  checkArticle(grade, context)
  checkRetest(grade, context)
  checkPublic(grade.public ?? [], context)
})

/** Flake is sold for what it consists of. */
function checkArticle(
  {
    kind,
    article,
    service,
    visual
  }: {
    readonly kind: 'flake' | 'foil'
    readonly article?: unknown
    readonly service?: unknown
    readonly visual?: unknown
  },
  context: z.RefinementCtx
): void {
  if (service !== undefined && kind === 'flake')
    refuse(context, ['service'], 'INVALID_VALUE', [
      'is of gaskets, and this grade is flake',
      'write it in the grade of the foil'
    ])
  if (visual !== undefined && kind === 'flake')
    refuse(context, ['visual'], 'INVALID_VALUE', [
      'is of sheets and rolls, and this grade is flake',
      'write it in the grade of the foil'
    ])
  if (article === undefined || kind === 'foil') return
  refuse(context, ['article'], 'INVALID_VALUE', [
    'flake is a substance or a mixture, never an article',
    "declare its 'hazards:' instead"
  ])
}

/** A working ends in its figure, so it cannot be shown where figures are not. */
function checkPublic(
  sections: readonly (typeof publicSections)[number][],
  context: z.RefinementCtx
): void {
  const index = sections.indexOf('working')
  if (index >= 0 && !sections.includes('results'))
    refuse(context, ['public', index], 'INVALID_VALUE', [
      "shows the figures that 'public' leaves out: it needs 'results' beside it",
      "add 'results', or take 'working' out"
    ])
}

/** A retest is judged by the grade's limits, so each quantity needs one. */
function checkRetest(
  grade: {
    readonly retest?: readonly QuantityKey[] | undefined
    readonly limits: { readonly [Key in QuantityKey]?: Limit | undefined }
  },
  context: z.RefinementCtx
): void {
  for (const [index, key] of (grade.retest ?? []).entries())
    if (!grade.limits[key])
      refuse(context, ['retest', index], 'INVALID_VALUE', [
        `${key} has no limit in this grade to be tested against again`,
        'give it a limit, or take it out'
      ])
}

/** Limits hold for figures customers see; only sheets come in numbers. */
function checkLimits(
  grade: { kind: 'flake' | 'foil'; limits: { [Key in QuantityKey]?: Limit | undefined } },
  context: z.RefinementCtx
): void {
  for (const { key, side } of Object.values(quantities)) {
    const limit = grade.limits[key]
    if (limit && side === 'process') refuse(context, ['limits', key], 'INVALID_VALUE', PROCESS(key))
    if (limit?.of && limit.of !== 'lot mean' && grade.kind === 'flake')
      refuse(context, ['limits', key, 'of'], 'INVALID_VALUE', [
        `a limit of flake holds for the lot mean, got '${limit.of}'`,
        "take 'of:' out"
      ])
  }
}
