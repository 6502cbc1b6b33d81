/** The graph of lots: both directions agree, and no gram is lost, in any workshop. */

import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { recallRows, stepRows, traceData } from '../../src/documents/recall.ts'
import { traceText } from '../../src/documents/trace-tree.ts'
import type { SourceFile } from '../../src/problem.ts'
import { loadContent } from '../../src/records/content.ts'
import { balanceOf, balanceParts } from '../../src/trace/balance.ts'
import { openGraph } from '../../src/trace/graph.ts'
import { traceLot } from '../../src/trace/reach.ts'
import { demoFiles } from '../records-on-disk.ts'
import { randomWorkshop, type RandomWorkshop } from './random-workshop.ts'

function graphOf(files: readonly SourceFile[], asOf = '2026-12-31') {
  const content = loadContent(files)
  if (!content.ok) throw new Error(content.problems.map(({ message }) => message).join('\n'))
  return openGraph(content.value, asOf)
}

const shownAs = (files: readonly SourceFile[], lot: string) => {
  const graph = graphOf(files)
  const trace = traceLot(graph, lot)!
  return [traceText(graph, trace), recallRows(graph, trace), traceData(graph, trace)]
}

test('a lot leads down to another exactly where that leads up to it, with the same steps', () => {
  fc.assert(
    fc.property(randomWorkshop, ({ files, moves }) => {
      const graph = graphOf(files)
      const traces = [...graph.lots.keys()].map(lot => traceLot(graph, lot)!)
      const steps = traces.flatMap(({ up }) => up).map(step => JSON.stringify(step))
      expect(new Set(steps)).toEqual(
        new Set(traces.flatMap(({ down }) => down).map(step => JSON.stringify(step)))
      )
      expect(new Set(steps).size).toBe(moves.length)
      for (const { lot, down } of traces)
        for (const other of traces)
          expect(down.some(({ into }) => into === other.lot.lot)).toBe(
            other.up.some(({ from }) => from === lot.lot)
          )
    }),
    { numRuns: 60 }
  )
})

/** What a lot's parts come to by the moves alone, in milligrams. */
function ledger({ moves, shipments, returned, lost, made }: RandomWorkshop, lot: string) {
  const sum = (list: readonly { readonly mg: number }[]) =>
    list.reduce((total, { mg }) => total + mg, 0)
  const of = <Item extends { readonly from: string }>(list: readonly Item[]) =>
    list.filter(({ from }) => from === lot)
  const back = (fate: string) => sum(of(returned).filter(one => one.fate === fate))
  const used = sum(of(moves))
  const sent = sum(of(shipments))
  return {
    inStock_g: made.get(lot)! - used - sent - sum(of(lost)) + back('restocked'),
    shipped_g: sent - sum(of(returned)),
    returned_g: back('held'),
    used_g: used,
    tested_g: 0,
    retained_g: 0,
    scrapped_g: back('scrapped'),
    lost_g: sum(of(lost))
  }
}

test('every lot is where the moves put it, to the milligram, and the parts add up to it', () => {
  fc.assert(
    fc.property(randomWorkshop, workshop => {
      const graph = graphOf(workshop.files)
      for (const lot of graph.lots.values()) {
        const balance = balanceOf(graph, lot)
        const parts = Object.fromEntries(
          balanceParts.map(part => [part, balance[part].times(1000).toNumber()])
        )
        expect(parts).toEqual(ledger(workshop, lot.lot))
        const total = balanceParts.reduce((sum, part) => sum.plus(balance[part]), new Decimal(0))
        expect(total.toString()).toBe(balance.made_g.toString())
      }
    }),
    { numRuns: 60 }
  )
})

test('the order of the files changes nothing', () => {
  fc.assert(
    fc.property(
      randomWorkshop.chain(({ files }) =>
        fc.tuple(fc.constant(files), fc.shuffledSubarray([...files], { minLength: files.length }))
      ),
      ([files, shuffled]) => {
        expect(shownAs(shuffled, 'M-1')).toEqual(shownAs(files, 'M-1'))
      }
    ),
    { numRuns: 40 }
  )
  expect(shownAs([...demoFiles].reverse(), 'GR-26-01')).toEqual(shownAs(demoFiles, 'GR-26-01'))
})

test('in the demo every row of a lot adds up, its difference included', () => {
  const graph = graphOf(demoFiles)
  for (const { lot } of graph.lots.values()) {
    const { columns, rows } = recallRows(graph, traceLot(graph, lot)!)
    const first = columns.indexOf('made_g')
    for (const row of rows.filter(([kind]) => kind === 'lot')) {
      const [made, ...parts] = row.slice(first, first + 10)
      expect(Decimal.sum(...parts).toString(), row.join()).toBe(new Decimal(made!).toString())
    }
  }
})

test('a graphite lot leads to every shipment that holds some of it, and to no other', () => {
  const graph = graphOf(demoFiles)
  const shipments = (lot: string) =>
    new Set(
      stepRows(traceLot(graph, lot)!).rows.flatMap(([way, , to]) => (way === 'shipped' ? [to] : []))
    )
  // By hand from the records: batches 1, 3, 4, 5, 6 and 8 are charged with it.
  expect(shipments('GR-26-01')).toEqual(new Set(['SH-26-01', 'SH-26-02', 'SH-26-04', 'SH-26-05']))
  expect(shipments('BE-26-01')).toEqual(new Set())
})

test('a day in the past knows nothing of what came later', () => {
  const graph = graphOf(demoFiles, '2026-04-10')
  const balance = balanceOf(graph, graph.lots.get('FL-26-003')!)
  expect([balance.shipped_g, balance.scrapped_g].map(String)).toEqual(['9.95', '0'])
  expect(graph.lots.has('EB-26-008')).toBe(false)
})

test('a count is of its day: what is missing is named, what was found beyond as well', () => {
  const counted = (mass: string, on: string) =>
    demoFiles.map(file =>
      file.path.endsWith('XR-26-01.yaml')
        ? {
            ...file,
            text: file.text.replace(
              /counted:[\s\S]*$/u,
              `counted:\n  - { on: ${on}, mass: ${mass} }\n`
            )
          }
        : file
    )
  const found = (mass: string, on: string) => {
    const graph = graphOf(counted(mass, on))
    const { inStock_g, difference_g } = balanceOf(graph, graph.lots.get('XR-26-01')!)
    return [inStock_g, difference_g].map(String)
  }
  expect(found('1.44 g', '2026-02-27')).toEqual(['1.44', '0'])
  expect(found('0 g', '2026-02-27')).toEqual(['0', '1.44'])
  expect(found('2 g', '2026-02-27')).toEqual(['2', '-0.56'])
  // FL-26-002 took 17.61 g on 13 February, the day after this count.
  expect(found('19 g', '2026-02-12')).toEqual(['1.39', '0.05'])
})
