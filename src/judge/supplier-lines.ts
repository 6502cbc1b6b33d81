/** Substances as their suppliers' safety data sheets classify them, beside what is known here. */

import type { ClassName } from '../hazards/classes.ts'
import { isClassName } from '../hazards/classes.ts'
import type { Clause } from '../hazards/clauses.ts'
import {
  findSubstance,
  type Form,
  type Substance,
  type SupplierLines,
  unknownSubstance,
  withSupplier
} from '../hazards/substances.ts'
import type { Material } from '../records/types.ts'

type Said = NonNullable<Material['classification']>[number]

/**
 * The substance a record names, with what the suppliers of these materials say of it; where several
 * do, all of it counts. A reader learns the sheet's revision and date, never whose it is.
 */
export function suppliedSubstance(name: string, materials: readonly Material[]): Substance {
  const known = findSubstance(name)
  const said = materials.flatMap(({ classification = [], safetyDataSheet: sheet }) =>
    classification.filter(one => isOf(one.substance, name)).map(one => linesOf(one, sheet))
  )
  if (said.length === 0) return known ?? unknownSubstance(name)
  return withSupplier(known, known?.names[0] ?? name, joined(said))
}

const isOf = (one: string, other: string): boolean =>
  (findSubstance(one)?.id ?? one.trim().toLowerCase()) ===
  (findSubstance(other)?.id ?? other.trim().toLowerCase())

/** What each sheet says, together; a group none of them speaks of stays as it is known. */
function joined(said: readonly Partial<SupplierLines>[]): Partial<SupplierLines> {
  const every = <Group extends keyof SupplierLines>(group: Group) =>
    said.some(one => one[group])
      ? { [group]: said.flatMap<SupplierLines[Group][number]>(one => [...(one[group] ?? [])]) }
      : {}
  return {
    ...every('classes'),
    ...every('limits'),
    ...every('ates'),
    ...every('mFactors'),
    ...every('traits'),
    ...every('statements')
  }
}

function linesOf(said: Said, sheet: Material['safetyDataSheet']): Partial<SupplierLines> {
  const clause: Clause = {
    source: sheet
      ? `supplier’s safety data sheet, revision ${sheet.revision} of ${sheet.date}`
      : 'supplier’s safety data sheet',
    sure: 'print'
  }
  const { classes, notClassified, limits, statements, traits } = said
  const ates = atesOf(said).map(one => ({ ...one, ...clause }))
  const mFactors = (['acute', 'chronic'] as const).flatMap(kind => {
    const m = kind === 'acute' ? said.mAcute : said.mChronic
    return m ? [{ kind, m: m.value, ...clause }] : []
  })
  return {
    ...(classes || notClassified ? { classes: classesOf(classes ?? [], clause) } : {}),
    ...(limits ? { limits: limitsOf(limits, clause) } : {}),
    ...(ates.length > 0 ? { ates } : {}),
    ...(mFactors.length > 0 ? { mFactors } : {}),
    ...(statements ? { statements: statements.map(code => ({ code, ...clause })) } : {}),
    ...(traits ? { traits: traits.map(trait => ({ trait, ...clause })) } : {})
  }
}

// Classes that no list knows are told of by documents/check-suppliers.ts.
const named = (name: string): ClassName[] => (isClassName(name) ? [name] : [])

const classesOf = (lines: NonNullable<Said['classes']>, clause: Clause) =>
  lines.flatMap(({ class: name, form, organ }) =>
    named(name).map(known => ({
      class: known,
      ...(form === undefined ? {} : { form }),
      ...(organ === undefined ? {} : { fill: `(${organ})` }),
      ...clause
    }))
  )

const limitsOf = (lines: NonNullable<Said['limits']>, clause: Clause) =>
  lines.flatMap(({ class: name, from_percent: from, below_percent: below }) =>
    named(name).map(known => ({
      class: known,
      from_percent: from.value,
      ...(below ? { below_percent: below.value } : {}),
      ...clause
    }))
  )

function atesOf({ ate }: Said): { form: Form; ate: number }[] {
  const given: readonly (readonly [Form, { value: number } | undefined])[] = [
    ['oral', ate?.oral_mg_per_kg],
    ['dermal', ate?.dermal_mg_per_kg],
    ['gas', ate?.gasPpm],
    ['vapour', ate?.vapour_mg_per_L],
    ['mist', ate?.mist_mg_per_L]
  ]
  return given.flatMap(([form, reading]) => (reading ? [{ form, ate: reading.value }] : []))
}
