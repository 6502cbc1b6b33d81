/** A planned charge in words. Private throughout. */

import type { CautionBlock } from '../hazards/cautions.ts'
import { limitText } from '../hazards/exposure.ts'
import { statementText } from '../hazards/statements.ts'
import { inSentence } from '../quantities.ts'
import type { Plan, PlannedPart } from '../plan/types.ts'
import { figure, significant } from './figure.ts'
import type { PlanDocument, PlanLine } from './plan-types.ts'
import type { Fact, Figure, Table } from './types.ts'
import { dateText } from './words.ts'

/** Said on every plan and every bench sheet. */
export const planStatements: readonly string[] = [
  'No figure here says that a charge is safe. The heat of the reaction itself, of acid and oxidiser with graphite, is not included in any heat figure.',
  'Such batches are not scaled by proportion: heat grows with the mass, and the surface that cools it does not. A larger charge needs an assessment of its own.',
  'The ratios are those of the producer’s own record, the limit that of the producer’s own assessment. Local codes and competent persons decide how this work is done.'
]

export function planDocument(plan: Plan): PlanDocument {
  const lines = plan.parts.flatMap(linesOf)
  return {
    title: `Plan of a charge, grade ${plan.grade.id}, revision ${plan.grade.revision}`,
    day: plan.day,
    facts: factsOf(plan),
    lines,
    amounts: amountsTable(lines),
    figures: [
      ...heatFigures(plan),
      ...neutraliserFigures(plan),
      ...washFigures(plan),
      ...gasFigures(plan),
      ...wasteFigures(plan)
    ],
    cautions: cautionTexts(plan.cautions, plan.grade.cautions ?? []),
    statements: planStatements
  }
}

const g = (value: number): Figure => significant(value, 4)

function linesOf({ role, name, takings, volume_mL }: PlannedPart): PlanLine[] {
  return takings.map(({ material, container, mass_g, left_g }, index) => ({
    as: role,
    name,
    lot: material.lot,
    ...(container === undefined ? {} : { container: container.number }),
    mass: g(mass_g),
    ...(volume_mL && index === 0 ? { volume: significant(volume_mL.value, 3) } : {}),
    left: g(container?.left_g ?? left_g)
  }))
}

const amountsTable = (lines: readonly PlanLine[]): Table => ({
  caption: 'Amounts, oldest usable lot first',
  columns: [
    { title: 'As', numeric: false },
    { title: 'What', numeric: false },
    { title: 'Lot', numeric: false },
    { title: 'Mass / g', numeric: true },
    { title: 'Volume at 20 °C / mL', numeric: true },
    { title: 'Lot has / g', numeric: true }
  ],
  rows: lines.map(line => [
    line.as,
    line.name,
    [line.lot, line.container].filter(Boolean).join(', '),
    line.mass.printed,
    line.volume?.printed ?? '',
    line.left.printed
  ])
})

function factsOf({ day, graphite_g, masses, limit, yields, product_g, grade }: Plan): Fact[] {
  const limits = [
    ['graphite', limit.graphite_g],
    ['acid', limit.acid_g],
    ['oxidiser', limit.oxidiser_g],
    ['in all', limit.total_g]
  ] as const
  const said = limits.flatMap(([part, most]) => (most ? [`${part} ${most.written}`] : []))
  return [
    { label: 'Day', text: dateText(day) },
    { label: 'Recipe', text: grade.recipe!.from },
    { label: 'Graphite', text: `${g(graphite_g).printed} g` },
    { label: 'Reacting in all', text: `${g(masses.total).printed} g` },
    { label: 'Vessel', text: limit.vessel },
    { label: 'Its documented limit', text: `${said.join(', ')} (${limit.assessment})` },
    { label: 'Expected product', text: productText(product_g, yields.n) }
  ]
}

function productText(product: Plan['product_g'], n: number): string {
  if (!product) return 'not known: no past batch of this grade'
  const { expected, low, high } = product
  const basis = n === 1 ? 'from 1 past batch of this grade' : `from ${n} past batches of this grade`
  return low === undefined || high === undefined
    ? `${g(expected).printed} g, ${basis}, which tells no spread`
    : `${significant(expected, 3).printed} g, between ${significant(low, 3).printed} g and ${significant(high, 3).printed} g with 95 % probability, ${basis}`
}

type Line = PlanDocument['figures'][number]

const line = (label: string, value: Figure, unit: string, note?: string): Line => ({
  label,
  value,
  unit,
  ...(note === undefined ? {} : { note })
})

const WITHOUT_REACTION = 'the heat of the reaction itself is not included'

function heatFigures({ heats }: Plan): Line[] {
  if (!heats) return []
  return [
    line(
      'Heat of diluting the acid in the planned water',
      significant(heats.dilution_kJ.value, 3),
      'kJ',
      `± 5 %; ${WITHOUT_REACTION}`
    ),
    line(
      'Adiabatic rise with the planned water',
      significant(heats.dilutionRise_K.value, 2),
      'K',
      WITHOUT_REACTION
    ),
    line(
      'Adiabatic rise without it, at the worst smaller amount',
      significant(heats.worstRise_K, 2),
      'K',
      `it may boil and spit; ${WITHOUT_REACTION}`
    )
  ]
}

function neutraliserFigures({ neutralising: planned }: Plan): Line[] {
  if (!planned) return []
  const { base, all_g, drained_g, washed_g, cakeRise_K, undilutedRise_K } = planned
  const asSold = `${base}, as sold`
  return [
    line('Neutraliser for all acid charged', significant(all_g.value, 3), 'g', asSold),
    ...(drained_g
      ? [
          line(
            'Neutraliser for what the drained cake holds',
            significant(drained_g.value, 3),
            'g',
            asSold
          )
        ]
      : []),
    ...(washed_g
      ? [
          line(
            'Neutraliser for what it holds after the washes',
            significant(washed_g.value, 2),
            'g',
            asSold
          )
        ]
      : []),
    ...(cakeRise_K
      ? [
          line(
            'Adiabatic rise on neutralising the drained cake',
            significant(cakeRise_K.value, 2),
            'K',
            WITHOUT_REACTION
          )
        ]
      : []),
    line(
      'Adiabatic rise on neutralising all acid without the planned water',
      significant(undilutedRise_K.value, 2),
      'K',
      `never done so: it shows why the quench comes first; ${WITHOUT_REACTION}`
    )
  ]
}

function washFigures({ washing }: Plan): Line[] {
  if (!washing) return []
  return [
    line(
      'Washes, at least',
      figure(washing.washes, String(washing.washes)),
      '',
      `of ${g(washing.wash_g).printed} g of water each, to ${washing.target_percent} % of free acid; well-mixed washes, and acid comes out of the flake slowly: test it`
    )
  ]
}

function gasFigures({ gas }: Plan): Line[] {
  if (!gas) return []
  return [
    line(
      'Gas when all of the product is expanded, at most',
      significant(gas.gas_L.value, 2),
      'L',
      `25 °C; from ${gas.lossFrom}, ${significant(gas.loss_percent, 3).printed} %, as though all were water vapour`
    ),
    line(
      'Sulfur dioxide of it, at most',
      significant(gas.sulfurDioxide_g.value, 2),
      'g',
      'as though all that leaves were sulfuric acid'
    ),
    ...(gas.inRoom_mg_per_m3
      ? [
          line(
            `Worst in the room of ${gas.room}`,
            significant(gas.inRoom_mg_per_m3.value, 2),
            'mg/m³',
            'all at once, evenly mixed, no air changed; nearer the furnace it is more'
          )
        ]
      : [])
  ]
}

function wasteFigures({ waste }: Plan): Line[] {
  return [
    line(
      'Spent liquor to dispose of',
      significant(waste.liquor_g, 3),
      'g',
      `with up to ${significant(waste.acid_g, 3).printed} g of acid in it`
    ),
    ...(waste.washWater_g === undefined
      ? []
      : [line('Wash water to dispose of', significant(waste.washWater_g, 3), 'g')])
  ]
}

/** Cautions for exactly what goes in, then the grade's own. */
export function cautionTexts(
  block: CautionBlock,
  own: readonly string[]
): PlanDocument['cautions'] {
  const sections: [string, string[]][] = [
    ['Reagents', block.reagents.map(reagentText)],
    ['Handling', block.handling.map(({ text }) => `${text}.`)],
    [
      'In this charge together',
      block.incompatible.filter(({ together }) => together).map(({ text }) => `${text}.`)
    ],
    [
      'Never together with',
      block.incompatible.filter(({ together }) => !together).map(({ text }) => `${text}.`)
    ],
    ['Gases that can come off', block.gases.map(({ gas, text }) => `${gas}: ${inSentence(text)}.`)],
    [
      'Limits of exposure',
      block.exposure.map(({ name, limits }) => `${name}: ${limits.map(limitText).join('; ')}.`)
    ],
    ['Waste', block.disposal.map(({ text }) => `${text}.`)],
    ['Nothing is known here of', [...block.unknown]],
    ['Of the grade', [...own]]
  ]
  return sections
    .filter(([, texts]) => texts.length > 0)
    .map(([heading, texts]) => ({ heading, texts: [...new Set(texts)] }))
}

function reagentText({ name, signal, statements, gaps }: CautionBlock['reagents'][number]): string {
  const texts = statements.map(({ code, fill }) => {
    const statement = statementText(code, 'en', fill)
    return 'text' in statement ? `${code} ${statement.text}` : code
  })
  const said = [...(signal ? [`${signal}.`] : []), ...texts].join(' ')
  const open = gaps.length > 0 ? ' Its supplier’s sheet tells more.' : ''
  return `${name}: ${said || 'no statement by what is known here.'}${open}`
}
