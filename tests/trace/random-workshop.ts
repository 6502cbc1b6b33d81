/** Random workshops as record files, with the ledger they were drawn from. */

import fc from 'fast-check'
import type { SourceFile } from '../../src/problem.ts'
import { base } from '../records/workshop.ts'

/** An amount moved in milligrams, so that the ledger is exact. */
export interface Move {
  readonly from: string
  readonly to: string
  readonly mg: number
}

export interface RandomWorkshop {
  readonly files: readonly SourceFile[]
  readonly moves: readonly Move[]
  readonly shipments: readonly Move[]
  readonly returned: readonly (Move & { readonly fate: 'held' | 'restocked' | 'scrapped' })[]
  readonly lost: readonly Move[]
  readonly made: ReadonlyMap<string, number>
}

const surroundings = base.filter(({ path }) => /^(producer|grades|instruments|methods)/u.test(path))

const masses = fc.array(fc.nat({ max: 3 }), { minLength: 24, maxLength: 24 })

/** Up to three materials and six batches, each from any of those before it, some shipped and returned. */
export const randomWorkshop: fc.Arbitrary<RandomWorkshop> = fc
  .record({
    materials: fc.integer({ min: 1, max: 3 }),
    batches: fc.integer({ min: 1, max: 6 }),
    masses: fc.array(masses, { minLength: 6, maxLength: 6 }),
    fates: fc.array(fc.constantFrom('held', 'restocked', 'scrapped', 'kept'), {
      minLength: 6,
      maxLength: 6
    })
  })
  .map(({ materials, batches, masses: table, fates }) => {
    const names = (start: string, n: number) =>
      Array.from({ length: n }, (_, index) => `${start}-${index + 1}`)
    const bought = names('M', materials)
    const own = names('B', batches)
    const moves = own.flatMap((to, row) =>
      [...bought, ...own.slice(0, row)].flatMap((from, column) => {
        const mg = (table[row]![column] ?? 0) * 1234 + column
        return (table[row]![column] ?? 0) > 0 ? [{ from, to, mg }] : []
      })
    )
    const shipments = own.flatMap((from, row) =>
      table[row]![20]! > 0 ? [{ from, to: `S-${row + 1}`, mg: table[row]![20]! * 707 }] : []
    )
    const returned = shipments.flatMap((move, index) => {
      const fate = fates[index]!
      return fate === 'kept' ? [] : [{ ...move, mg: Math.ceil(move.mg / 3), fate }]
    })
    const lost = own.flatMap((from, row) =>
      table[row]![21]! > 0
        ? [{ from, to: `${row % 2 ? 'W' : 'I'}-${row + 1}`, mg: table[row]![21]! * 333 + row }]
        : []
    )
    const made = new Map([...bought, ...own].map(lot => [lot, 1_000_000]))
    const files = [
      ...surroundings,
      ...bought.map(materialFile),
      ...own.map(lot => batchFile(lot, moves)),
      ...shipments.map(shipmentFile),
      ...returned.map(complaintFile),
      ...lost.map(lossFile)
    ]
    return { files, moves, shipments, returned, lost, made }
  })

const g = (mg: number) => `${(mg / 1000).toFixed(3)} g`

const materialFile = (lot: string): SourceFile => ({
  path: `materials/${lot}.yaml`,
  text: `lot: ${lot}\ntitle: ${lot}\nkind: graphite\nsupplier: S\nreceived: 2026-01-10\nquantity: 1000 g\n`
})

function batchFile(lot: string, moves: readonly Move[]): SourceFile {
  const into = moves.filter(({ to }) => to === lot)
  const part = (start: string, key: string, as: string) => {
    const lines = into
      .filter(({ from }) => from.startsWith(start))
      .map(({ from, mg }) => `  - { ${key}: ${from},${as} mass: ${g(mg)} }\n`)
    return lines.length > 0 ? `${key === 'lot' ? 'from' : 'charge'}:\n${lines.join('')}` : ''
  }
  return {
    path: `batches/${lot}.yaml`,
    text: `lot: ${lot}\ngrade: FK-1\nmade: 2026-02-02\nproduct: { mass: 1000 g }\n${part('M', 'material', ' as: graphite,')}${part('B', 'lot', '')}`
  }
}

const shipmentFile = ({ from, to, mg }: Move): SourceFile => ({
  path: `shipments/${to}.yaml`,
  text: `number: ${to}\nsent: 2026-03-01\ncustomer: =C\ncontents:\n  - { lot: ${from}, mass: ${g(mg)} }\n`
})

const lossFile = ({ from, to, mg }: Move): SourceFile => ({
  path: `${to.startsWith('W') ? 'waste' : 'incidents'}/${to}.yaml`,
  text:
    (to.startsWith('W')
      ? `number: ${to}\ncollected: 2026-03-05\nkind: product\nmass: 1 g\n`
      : `number: ${to}\nhappened: 2026-03-05\nkind: spill\nwhat: x\n`) +
    `lost: [{ lot: ${from}, mass: ${g(mg)} }]\n`
})

const complaintFile = ({ from, to, mg, fate }: RandomWorkshop['returned'][number]): SourceFile => ({
  path: `complaints/C-${to}.yaml`,
  text: `number: C-${to}\nshipment: ${to}\nlot: ${from}\nreceived: 2026-03-02\nreported: x\nreturned:\n  - on: 2026-03-03\n    mass: ${g(mg)}\n${
    fate === 'held' ? '' : `    decision: { is: ${fate}, on: 2026-03-04, by: quality manager }\n`
  }`
})
