/** Coating panels: bench screening of what a flake does in a paint. Private throughout. */

import * as z from 'zod'
import { momentOf, secondsOf } from '../../metrology/moments.ts'
import { quoted } from '../../problem.ts'
import {
  condition,
  date,
  fields,
  identifier,
  list,
  maybe,
  quantity,
  refuse,
  text
} from '../fields.ts'
import { instrumentsByRole, person, testHead } from './common.ts'

/** Own coating, somebody else's, or a bare plate to hold them against. */
export const panelKinds = ['own', 'bought-in', 'blank'] as const

/** When, on the clock of the log or from its beginning. */
const moment = () =>
  z.string().superRefine((value, context) => {
    if (!momentOf(value))
      refuse(context, [], 'INVALID_VALUE', [
        `tells no moment: ${quoted(value)}`,
        'write it as 90 s, 1.5 min, or 14:05:30'
      ])
  })

/** Flake in the coating: of the wet paint, of the dry film, or as weighed into the paint. */
const loading = fields({
  wet: maybe(quantity('%', 'above 0')),
  dry: maybe(quantity('%', 'above 0')),
  flake: maybe(quantity('g', 'above 0')),
  paint: maybe(quantity('g', 'above 0')),
  /** Taken from the lot for it, where the loading is told in per cent. */
  used: maybe(quantity('g', 'above 0')),
  /** Panel painted out of the same pot, whose record has its flake. */
  'pot-of': maybe(identifier())
}).superRefine(({ wet_percent, dry_percent, flake_g, paint_g, used_g, potOf }, context) => {
  if (used_g && (flake_g ?? potOf) !== undefined)
    refuse(context, ['used_g'], 'INVALID_VALUE', [
      flake_g ? 'stands beside the flake weighed in' : 'stands beside a pot that has its flake',
      'keep one of the two: flake is taken from its lot once'
    ])
  const ways = [wet_percent, dry_percent, flake_g ?? paint_g].filter(way => way !== undefined)
  if (ways.length !== 1)
    refuse(context, [], ways.length === 0 ? 'MISSING_FIELD' : 'INVALID_VALUE', [
      ways.length === 0 ? 'says neither wet nor dry' : 'is told in more than one way',
      "write one of 'wet: 9.1 %', 'dry: 15 %', or 'flake:' with 'paint:'"
    ])
  if (!flake_g !== !paint_g)
    refuse(context, [flake_g ? 'paint_g' : 'flake_g'], 'MISSING_FIELD', [
      'is missing: the two masses tell the loading together',
      'add what was weighed'
    ])
})

/** Solids of the paint before flake went in: dried here, or as somebody states them. */
const solids = fields({
  stated: maybe(quantity('%', 'above 0')),
  /** Either way of the stated figure; one step of its last digit where nothing is said. */
  within: maybe(quantity('%', 'above 0')),
  from: maybe(text()),
  instruments: maybe(instrumentsByRole),
  readings: maybe(
    list(fields({ dish: quantity('g'), before: quantity('g'), after: quantity('g') }))
  )
}).superRefine(({ stated_percent, within_percent, readings }, context) => {
  if (!stated_percent === !readings)
    refuse(context, [], stated_percent ? 'INVALID_VALUE' : 'MISSING_FIELD', [
      stated_percent ? 'are both stated and dried here' : 'have no figure',
      "write 'stated:', or 'readings:' of what was dried"
    ])
  if (within_percent && !stated_percent)
    refuse(context, ['within_percent'], 'INVALID_VALUE', [
      'belongs to a stated figure',
      'take it out: readings bring their own uncertainty'
    ])
})

/** Readings over a panel, by an instrument of their own where one is named. */
const spread = () =>
  fields({ instruments: maybe(instrumentsByRole), readings: list(quantity('mm', 'above 0')) })

const shape = fields({
  number: identifier(),
  made: date(),
  kind: z.enum(panelKinds),
  /** What it is called beside others, whoever made the coating. */
  code: identifier(),
  maker: maybe(text()),
  product: maybe(text()),
  /** Flake in it. */
  lot: maybe(identifier()),
  loading: maybe(loading),
  solids: maybe(solids),
  plate: fields({
    what: text(),
    length: condition('plate side'),
    width: condition('plate side'),
    thickness: condition('plate thickness')
  }),
  mass: maybe(fields({ plate: quantity('g', 'above 0'), coated: quantity('g', 'above 0') })),
  'wet-film': maybe(spread()),
  'dry-film': maybe(spread()),
  /** Of the dry film, where the plate was not weighed. */
  'film-density': maybe(condition('film density')),
  ...testHead,
  tested: maybe(date()),
  /** How it was heated: burner, distance, where the back was read. */
  how: maybe(text()),
  /** The stated temperature of the back. */
  until: maybe(condition('back temperature')),
  /** When heating began, on the log's clock; its first line where nothing is said. */
  start: maybe(fields({ at: moment(), within: maybe(condition('moment known within')) })),
  /** Bare panels heated alike. */
  bare: maybe(list(identifier())),
  log: maybe(list(fields({ at: moment(), temperature: condition('back temperature') }))),
  char: maybe(spread()),
  'painted-by': maybe(person()),
  notes: maybe(text())
})

type Panel = z.output<typeof shape>

export const panelRecord = shape.superRefine((panel, context) => {
  checkCoating(panel, context)
  checkFiring(panel, context)
  checkLog(panel, context)
})

/** What a panel of its kind bears, and what it cannot. */
function checkCoating(panel: Panel, context: z.RefinementCtx): void {
  const { kind, lot, loading, mass, dryFilm, bare, filmDensity_g_per_cm3: density } = panel
  const coating = { lot, loading, solids: panel.solids, mass, wetFilm: panel.wetFilm, dryFilm }
  const never = (field: string, message: string) =>
    refuse(context, [field], 'INVALID_VALUE', [message, 'take it out, or mend the kind'])
  if (kind === 'blank')
    for (const [field, value] of Object.entries({ ...coating, char: panel.char, bare }))
      if (value) never(field, 'stands on a blank panel, which is a bare plate')
  if (kind === 'bought-in' && lot !== undefined)
    never('lot', 'stands on a bought-in coating, whose flake is not ours')
  if (kind === 'own' && loading && lot === undefined)
    refuse(context, ['lot'], 'MISSING_FIELD', [
      'is missing: the loading is of some flake',
      "add 'lot:', or take the loading out of a paint without flake"
    ])
  if (kind !== 'own') {
    for (const [field, value] of Object.entries({ maker: panel.maker, product: panel.product }))
      if (kind === 'blank' && value) never(field, 'stands on a blank panel, which is a bare plate')
  }
  if (density && mass)
    refuse(context, ['filmDensity_g_per_cm3'], 'INVALID_VALUE', [
      'stands beside masses, which tell the film by themselves',
      'keep one of the two'
    ])
}

/** What was read in the fire has its day, and what it was heated to. */
function checkFiring(panel: Panel, context: z.RefinementCtx): void {
  const { tested, made, log, char, until_C, how, bare } = panel
  const missing = (field: string, message: string, hint: string) =>
    refuse(context, [field], 'MISSING_FIELD', [message, hint])
  if ((log ?? char) && tested === undefined)
    missing('tested', 'is missing: the panel was heated on some day', "add 'tested: 2026-03-14'")
  if ((log ?? char) && how === undefined)
    missing('how', 'is missing: a time means nothing without it', 'say burner, distance and flame')
  if (bare && !until_C)
    missing('until_C', 'is missing: time to which temperature?', "add 'until: 500 °C'")
  if (tested !== undefined && tested < made)
    refuse(context, ['tested'], 'DATE_ORDER', [
      `was heated on ${tested}, before it was made on ${made}`,
      'check the two dates'
    ])
}

/** Lines come one after the other; a clock may pass midnight. */
function checkLog({ log = [], start }: Panel, context: z.RefinementCtx): void {
  const texts = log.map(({ at }) => at)
  if (new Set([...texts, ...(start ? [start.at] : [])].map(at => momentOf(at)?.isClock)).size > 1)
    return refuse(context, [start ? 'start' : 'log'], 'INVALID_VALUE', [
      'counts in another way than the log: one by the clock, one from a beginning',
      'write all moments alike'
    ])
  const seconds = secondsOf(texts) ?? []
  const back = seconds.findIndex((second, index) => index > 0 && second <= seconds[index - 1]!)
  if (back > 0)
    refuse(context, ['log', back, 'at'], 'INVALID_VALUE', [
      `is ${texts[back]}, not later than the line before it`,
      'lines of a log stand in the order of their time'
    ])
}
