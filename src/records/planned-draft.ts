/** A planned charge as the draft of a batch: planned masses stand there, what is weighed is left blank. */

/** One line of the charge, its planned mass as printed, without unit. */
export interface DraftLine {
  readonly material: string
  readonly as: string
  readonly container?: string | undefined
  readonly planned: string
}

export interface DraftOfPlan {
  readonly lot: string
  readonly grade: string
  readonly made: string
  readonly vessel: string
  readonly charge: readonly DraftLine[]
}

/** Steps that every such batch has, to be replaced by what is really done. */
const before = ['  - { what: graphite stirred into the cooled acid, at: , temperature: }']
const oxidising = [
  '  - { what: oxidiser added in small portions with cooling, at: , for: , temperature: }'
]
const after = [
  '  - { what: held with stirring, for: , temperature: }',
  '  - { what: quenched into cold water, does: quench, at: , temperature: }',
  '  - { what: filtered, does: filter, cake: }',
  '  - { what: washed, does: wash, water: , cake: , ph: , conductivity: }',
  '  - { what: neutralised, does: neutralise, ph: , temperature: }',
  '  - { what: dried, does: dry, for: , temperature: }'
]

/** Text of the record. */
export const plannedDraft = ({ lot, grade, made, vessel, charge }: DraftOfPlan): string =>
  [
    '# yaml-language-server: $schema=../../schemas/batch.json',
    `lot: ${lot}`,
    'draft: yes',
    `grade: ${grade}`,
    `made: ${made}`,
    `vessel: ${vessel}`,
    'charge:',
    ...charge.map(
      ({ material, as, container, planned }) =>
        `  - { material: ${material}, as: ${as}, ${container === undefined ? '' : `container: ${container}, `}planned: ${planned} g, mass: }`
    ),
    'steps:',
    ...before,
    ...(charge.some(({ as }) => as === 'oxidiser') ? oxidising : []),
    ...after,
    'product: { mass: }',
    ''
  ].join('\n')
