/** Packing lists of the demo's shipments, in each language: the same masses, and no word of another. */

import { describe, expect, test } from 'vitest'
import { english } from '../../src/documents/languages/tongue.ts'
import { tongueFor } from '../../src/documents/languages/records.ts'
import { packingList } from '../../src/documents/packing-list.ts'
import type { PackingList } from '../../src/documents/shipment-types.ts'
import type { Shipment } from '../../src/records/types.ts'
import { judgeContent } from '../../src/pipeline.ts'
import { demoFiles } from '../records-on-disk.ts'
import { publicSite } from './demo.ts'
import { wordsIn } from './language-texts.ts'

const { content } = judgeContent(demoFiles).evaluated!
const tongue = { ...tongueFor(content, 'de'), own: (text: string) => `‹${text}›` }

const listsOf = (shipment: Shipment): readonly [PackingList, PackingList] => {
  const shared = {
    shipment,
    producer: publicSite.producer,
    paper: 'A4' as const,
    products: new Map(shipment.contents.map(({ lot }) => [lot, '‹Product›']))
  }
  const certificates = (words: typeof english) => [words.packing.certificate('C-1', 2, 'L-1')]
  return [
    packingList({ ...shared, tongue: english, certificates: certificates(english) }),
    packingList({ ...shared, tongue, certificates: certificates(tongue) })
  ]
}

const packed = [...content.shipments.values()]
  .map(({ record }) => record)
  .filter(one => one.packing)

/** What a list says, but for what records say: names of customers, places, products. */
const textsOf = ({ title, facts, containers, sections }: PackingList): string[] =>
  [
    title,
    ...facts.slice(4).flatMap(({ label, text }) => [label, text]),
    containers.heading,
    ...containers.texts,
    ...containers.table.columns.map(one => one.title),
    ...containers.table.rows.flat(),
    ...sections.flatMap(({ heading, texts }) => [heading, ...texts])
  ].map(text => text.replace(/‹.*?›/gu, ''))

const ENGLISH = new Set(
  'the of and or with is are by packages net gross mass lot container sheet pouch keep store sent no none together'.split(
    ' '
  )
)

describe.each(packed.map(record => [record.number, record] as const))(
  'shipment %s',
  (_, record) => {
    const [ours, theirs] = listsOf(record)

    test('has the same masses in either language', () => {
      const masses = ({ containers: { table } }: PackingList) =>
        table.rows.map(row => row.slice(4).map(text => text.replace(',', '.')))
      expect(masses(theirs)).toEqual(masses(ours))
      const shown = theirs.containers.table.rows.flatMap(row => row.slice(4)).join(' ')
      expect(shown).toMatch(/\d,\d/u)
      expect(shown).not.toMatch(/\d\.\d/u)
      expect(theirs.facts).toHaveLength(ours.facts.length)
      expect(theirs.sections.map(({ texts }) => texts.length)).toEqual(
        ours.sections.map(({ texts }) => texts.length)
      )
    })

    test('says nothing English in German', () => {
      expect(theirs.language).toBe('de')
      const english = (list: PackingList) =>
        textsOf(list).filter(text => wordsIn(text).some(word => ENGLISH.has(word)))
      expect(english(ours).length).toBeGreaterThan(8)
      expect(english(theirs)).toEqual([])
    })
  }
)

test('a comma is in every mass and temperature, and codes are as they were written', () => {
  const record = packed.find(({ packing }) => packing?.storeBelow_C)!
  const { gross_g, storeBelow_C, ...packing } = record.packing!
  const [, { facts, sections }] = listsOf({
    ...record,
    packing: {
      ...packing,
      gross_g: { ...gross_g, written: '186.5 g' },
      storeBelow_C: { ...storeBelow_C!, written: '37.5 °C' },
      tariffCode: '6815.19'
    }
  })
  const said = new Map(facts.map(({ label, text }) => [label, text]))
  expect(said.get('Nettomasse')).toMatch(/^\d+,\d+\u00a0g$/u)
  expect(said.get('Bruttomasse')).toBe('186,5\u00a0g')
  expect(said.get('Zolltarifnummer')).toBe('6815.19')
  expect(sections[0]!.texts).toContain('Unter 37,5\u00a0°C lagern.')
})
