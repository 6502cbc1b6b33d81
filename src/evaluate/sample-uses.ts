/** Flake of a lot that went into its tests, or into paint: what is no longer there to sell. */

import type { Batch, Entry, Panel, Records } from '../records/types.ts'
import type { Use } from './use.ts'

/** Blocks whose sample is the same afterwards, and goes back into the jar. */
const unharmed: ReadonlySet<string> = new Set(['sieve', 'bulkDensity', 'tappedDensity'])

interface Weighed {
  readonly value: number
}

/** What a reading of any test weighs in: the sample, or a dish with it less the dish. */
interface Sample {
  readonly mass_g?: Weighed | undefined
  readonly dish_g?: Weighed | undefined
  readonly before_g?: Weighed | undefined
}

const massOf = ({ mass_g, dish_g, before_g }: Sample): number =>
  mass_g?.value ?? (before_g && dish_g ? before_g.value - dish_g.value : 0)

/** Sample weighed in for the tests of a batch, of those that use it up. */
export function testUses(entry: Entry<Batch>): Use[] {
  const { lot, tests = {} } = entry.record
  const leaches = new Set<string>()
  return Object.entries(tests).flatMap(([block, test]): Use[] => {
    if (!test || unharmed.has(block) || isSameLeach(leaches, test)) return []
    const samples: readonly unknown[] = test.readings
    const mass_g = samples.filter(isGroup).reduce((sum, sample) => sum + massOf(sample), 0)
    const key = block.replace(/[A-Z]/gu, letter => `-${letter.toLowerCase()}`)
    const field = ['tests', key]
    return mass_g === 0
      ? []
      : [{ purpose: 'tested', lot, mass_g, by: `the ${key} test`, on: test.tested, entry, field }]
  })
}

const isGroup = (sample: unknown): sample is Sample => typeof sample === 'object'

/** One extract is read for several residues: its sample stands in each of their tests. */
function isSameLeach(
  leaches: Set<string>,
  test: NonNullable<NonNullable<Batch['tests']>[keyof NonNullable<Batch['tests']>]>
): boolean {
  const [first] = test.readings
  if (!('extract_mL' in test) || typeof first !== 'object' || !('concentration_mg_per_L' in first))
    return false
  const samples = test.readings.map(sample => ('mass_g' in sample ? sample.mass_g.written : ''))
  const name = [test.tested, test.extract_mL?.written, ...samples].join('\n')
  const isKnown = leaches.has(name)
  leaches.add(name)
  return isKnown
}

/** Flake stirred into the paint of panels; of a pot that painted several, once. */
export const paintUses = ({ panels }: Records): Use[] =>
  [...panels.values()].flatMap(entry => paintUse(entry))

function paintUse(entry: Entry<Panel>): Use[] {
  const { lot, number, made, loading } = entry.record
  const mass = loading?.flake_g ?? loading?.used_g
  if (lot === undefined || !mass || loading?.potOf !== undefined) return []
  return [
    {
      purpose: 'tested',
      lot,
      mass_g: mass.value,
      step_g: mass.resolution,
      by: `the paint of panel ${number}`,
      on: made,
      entry,
      field: ['loading', loading?.flake_g ? 'flake_g' : 'used_g']
    }
  ]
}
