/** From a need to a grade: certified limits, typical figures and released lots, side by side. */

import { quantities, type QuantityName } from '../quantities.ts'
import type { ChoiceCell, ChoiceGrade, ChoiceKind, ChoiceLot, ChoiceNeed } from './choice-types.ts'
import { unitText } from './figure.ts'
import type { GradeDocument } from './grade-types.ts'
import { lotUrl } from './lot.ts'
import type { LotForSale } from './lots-for-sale.ts'
import { english, type Tongue, wordsOf } from './languages/tongue.ts'

/** What customers ask of each kind, in the order they ask. */
const asked: Readonly<Record<ChoiceKind['id'], readonly QuantityName[]>> = {
  flake: ['expansionVolume_mL_per_g', 'onset_C', 'ash_percent', 'retained300_percent'],
  foil: [
    'thickness_mm',
    'foilDensity_g_per_cm3',
    'tensileAlong_MPa',
    'leachableChloride_mg_per_kg',
    'oxidationLoss_percent'
  ]
}

export interface ChoiceInputs {
  /** English where nothing is said. */
  readonly tongue?: Tongue
  readonly grades: readonly GradeDocument[]
  readonly kindOf: (grade: string) => ChoiceKind['id']
  readonly lotsOf: (grade: string) => readonly LotForSale[]
}

/** A table a kind that any grade is of; needs that no grade answers to are left out. */
export const choiceOf = (inputs: ChoiceInputs): ChoiceKind[] =>
  (['foil', 'flake'] as const).flatMap(id => {
    const own = inputs.grades.filter(grade => inputs.kindOf(grade.id) === id)
    const { tongue = english } = inputs
    const cells = own.map(grade => asked[id].map(quantity => cellOf(grade, quantity, tongue)))
    const used = asked[id].filter((_, index) =>
      cells.some(row => row[index]!.limit || row[index]!.typical)
    )
    const grades = own.map(grade => gradeOf(inputs, grade, used))
    return own.length > 0
      ? [
          {
            id,
            title: tongue.lot.kinds[id === 'flake' ? 'batch' : 'foil'],
            needs: used.map(quantity => needOf(quantity, tongue)),
            grades
          }
        ]
      : []
  })

const needOf = (quantity: QuantityName, tongue: Tongue): ChoiceNeed => ({
  key: quantities[quantity].key,
  title: wordsOf(tongue, quantity).title,
  unit: unitText(quantity)
})

function cellOf(
  { measured, observed }: GradeDocument,
  quantity: QuantityName,
  tongue: Tongue
): ChoiceCell {
  const need = needOf(quantity, tongue)
  const limit = measured.find(({ key }) => key === need.key)?.limit
  const typical = observed.find(({ key }) => key === need.key)
  return { ...need, ...(limit ? { limit } : {}), ...(typical ? { typical } : {}) }
}

function gradeOf(
  inputs: ChoiceInputs,
  grade: GradeDocument,
  used: readonly QuantityName[]
): ChoiceGrade {
  const { tongue = english } = inputs
  const lots = inputs.lotsOf(grade.id)
  return {
    id: grade.id,
    title: grade.title,
    url: grade.url,
    cells: used.map(quantity => cellOf(grade, quantity, tongue)),
    lots: lots.map(lotText),
    supply: supplyText(lots, tongue)
  }
}

function lotText({ lot, stock }: LotForSale): ChoiceLot {
  return { lot, url: lotUrl(lot), ...(stock ? { stock } : {}) }
}

function supplyText(lots: readonly LotForSale[], { series }: Tongue): string {
  const released = series.released(lots.length)
  if (lots.every(({ stock }) => stock === undefined)) return released
  const left = lots.filter(({ stock }) => stock).length
  return series.stocked(released, left)
}
