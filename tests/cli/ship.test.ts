/** lotfolio ship: what a customer gets, and where it never goes. */

import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { faultsOf } from '../pdf/rules.ts'
import { done } from '../site/issuing.ts'
import { demoWorkplace, lotfolio, namesIn, smallWorkplace, tree } from '../site/workplace.ts'
import { requireTool } from '../tools.ts'

const tools = requireTool('pdftotext', 'poppler-utils')

const packing =
  'packing: { packages: 1, gross: 90 g, store-below: 40 °C, keep-dry: yes, origin: Marlshire, tariff-code: 3801.90, emergency-telephone: +1 555 0177 }\n'
const contents = [
  'contents:',
  '  - lot: EB-1',
  '    mass: 10.00 g',
  '    customer-part: BS-77',
  '    containers:',
  '      - { number: C-1, kind: jar, tare: 31.2 g, net: 6.00 g, gross: 37.3 g }',
  '      - { number: C-2, kind: jar, tare: 31.2 g, net: 4.00 g }',
  '    limits: { expansion-volume: { min: 250 mL/g } }',
  ''
].join('\n')
const head = 'number: SH-1\nsent: 2026-03-02\ncustomer: Brask Seals\norder: PO 1\n'

/** A workshop with one shipment, and EB-1's certificate issued. */
async function shipping(text = head + contents + packing): Promise<string> {
  const place = smallWorkplace()
  const folder = join(place, 'content', 'shipments')
  mkdirSync(folder)
  writeFileSync(join(folder, 'SH-1.yaml'), text)
  await done(place, 'issue', 'EB-1', '--date', '2026-03-01')
  return place
}

const out = (place: string, name = '') => join(place, 'private', 'shipments', 'SH-1', name)

/** The face has one sign for two apostrophes, and names it by the other. */
const printed = (path: string): string =>
  execFileSync('pdftotext', ['-enc', 'UTF-8', '-layout', path, '-'])
    .toString('utf8')
    .replaceAll(/\s+/gu, ' ')
    .replaceAll('\u02bc', '’')

describe('ship', () => {
  test('writes packing list, copies and all of them as one, the same bytes each time', async () => {
    const place = await shipping()
    expect(await done(place, 'ship', 'SH-1')).toBe(
      'Wrote 3 files for shipment SH-1 to private/shipments/SH-1: private, they name the customer\n'
    )
    const names = ['CT-1-r1-SH-1.pdf', 'SH-1-packing-list.pdf', 'SH-1-papers.pdf']
    expect(namesIn(out(place))).toEqual(names)
    const before = tree(out(place))
    await done(place, 'ship', 'SH-1')
    expect(tree(out(place))).toEqual(before)
    for (const [name, files] of [
      ['CT-1-r1-SH-1.pdf', 1],
      ['SH-1-packing-list.pdf', 0],
      ['SH-1-papers.pdf', 1]
    ] as const)
      expect(faultsOf(readFileSync(out(place, name)), files), name).toEqual([])
  })

  test.runIf(tools)(
    'the copy names order, customer, quantity, signatory and verdicts',
    async () => {
      const place = await shipping()
      await done(place, 'ship', 'SH-1')
      const copy = printed(out(place, 'CT-1-r1-SH-1.pdf'))
      for (const text of [
        'Brask Seals',
        'PO 1',
        'Your part BS-77',
        'Quantity 10.00 g in 2 containers: C-1, C-2',
        'Signatory: Odile Varnholt, quality manager',
        'Customer’s limits',
        '≥ 250',
        'Meets the limit of the customer.',
        'Customer’s copy of certificate CT-1'
      ])
        expect(copy).toContain(text)
      const list = printed(out(place, 'SH-1-packing-list.pdf'))
      for (const text of [
        'C-1 jar EB-1 Expandable flake 31.2 6.00 37.3',
        'C-2 jar EB-1 Expandable flake 31.2 4.00 35.20',
        'Together 2 containers 62.4 10.00 72.50',
        'Net mass 10.00 g',
        'Gross mass 90 g',
        'Store below 40 °C.',
        'Keep dry.',
        'Emergency +1 555 0177',
        'Tariff code 3801.90',
        'No decision on carriage by a safety adviser is on record',
        'CT-1, revision 1, on lot EB-1.'
      ])
        expect(list).toContain(text)
      const all = printed(out(place, 'SH-1-papers.pdf'))
      expect(all).toContain('Page 1 of 1')
      expect(all).toContain('Your part BS-77')
      expect(all).not.toMatch(/undefined|NaN|Infinity|\[object/u)
    }
  )

  test.runIf(tools)('the public paper and site say none of it', async () => {
    const place = await shipping()
    await done(place, 'ship', 'SH-1')
    await done(place, 'build')
    const paper = printed(join(place, 'archive', 'CT-1-r1.pdf'))
    for (const word of ['Brask', 'PO 1 ', 'Varnholt', 'BS-77', 'C-2'])
      expect(paper).not.toContain(word)
    expect(Object.keys(tree(join(place, '_site'))).filter(path => path.includes('SH-1'))).toEqual(
      []
    )
  })

  test('the workshop edition is built around the papers, before and after', async () => {
    const place = await shipping()
    await done(place, 'ship', 'SH-1')
    const papers = tree(out(place))
    for (let round = 0; round < 2; round += 1) {
      await done(place, 'build', '--edition', 'workshop')
      expect(tree(out(place))).toEqual(papers)
      expect(existsSync(join(place, 'private', 'index.html'))).toBe(true)
    }
  })

  test.runIf(tools)('prints an adviser’s decision as theirs', async () => {
    const decided =
      'transport: { is: not dangerous goods, by: A. Adviser, basis: report 7, tests: [N.1], on: 2026-02-01, until: 2027-01-31 }\n'
    const place = await shipping(head + contents + packing + decided)
    await done(place, 'ship', 'SH-1')
    const list = printed(out(place, 'SH-1-packing-list.pdf'))
    expect(list).toContain(
      'Not dangerous goods: decided by A. Adviser on 1 February 2026, valid until 31 January 2027.'
    )
    expect(list).toContain('Basis: report 7; tests: N.1.')
    expect(list).toContain('The decision is the adviser’s; the producer reports it.')
  })

  test.runIf(tools)('each container of a kind the grade names has its label', async () => {
    const place = demoWorkplace()
    await done(place, 'ship', 'SH-26-06')
    const folder = join(place, 'private', 'shipments', 'SH-26-06')
    const labels = ['label-C-0601.pdf', 'label-C-0602.pdf']
    expect(namesIn(folder).filter(name => name.startsWith('label'))).toEqual(labels)
    for (const name of labels) {
      const label = printed(join(folder, name))
      expect(label).toContain(`Container: ${name.slice(6, 12)}`)
      expect(label).toContain('Nominal quantity: 10.0 g')
      expect(label).toContain('Lot: EB-26-010')
      expect(label).not.toContain('Brindlecroft')
    }
    const whole = join(folder, 'SH-26-06-papers.pdf')
    expect(printed(whole)).toContain('Container: C-0602')
    expect(faultsOf(readFileSync(whole), 1)).toEqual([])
  })

  test('tells everything that is missing, and writes nothing', async () => {
    const place = await shipping(
      `${head}contents:\n  - { lot: EB-1, mass: 5 g }\n  - { lot: FL-1, mass: 4 g }\n`
    )
    const { status, stdout, stderr } = await lotfolio(['ship', 'SH-1'], place)
    expect({ status, stdout }).toEqual({ status: 1, stdout: 'Nothing written\n' })
    expect(stderr.trimEnd().split('\n')).toEqual([
      "lotfolio: shipment SH-1 does not say how it is packed: add 'packing:'",
      "lotfolio: EB-1 is in no container: add 'containers:' to its line",
      "lotfolio: FL-1 is in no container: add 'containers:' to its line",
      'lotfolio: FL-1 has no certificate that stands: npm run issue -- FL-1'
    ])
    expect(existsSync(join(place, 'private'))).toBe(false)
  })

  test.for([
    ['_site', ['--out', '_site']],
    ['a folder in _site', ['--out', '_site/papers']],
    ['a marked public site', ['--out', 'public']]
  ] as [string, string[]][])('is refused for %s', async ([, args]) => {
    const place = await shipping()
    mkdirSync(join(place, 'public'))
    writeFileSync(
      join(place, 'public', 'lotfolio-site.json'),
      '{"lotfolio":"0","edition":"public"}'
    )
    const before = tree(place)
    const { status, stderr } = await lotfolio(['ship', 'SH-1', ...args], place)
    expect(status).toBe(1)
    expect(stderr).toContain('lies in the public site, and these papers name the customer')
    expect(tree(place)).toEqual(before)
  })

  test('is refused for records with an error, and for a shipment that is not there', async () => {
    const place = await shipping()
    expect((await lotfolio(['ship', 'SH-9'], place)).stderr).toContain(
      'no record has the shipment number SH-9'
    )
    writeFileSync(join(place, 'content/shipments/SH-2.yaml'), 'number: SH-2\n')
    const { status, stdout, stderr } = await lotfolio(['ship', 'SH-1'], place)
    expect({ status, stdout }).toEqual({ status: 1, stdout: 'Nothing written\n' })
    expect(stderr).toContain('MISSING_FIELD')
  })

  test('takes no certificate that declares compliance with another order', async () => {
    const place = await shipping()
    const order = join(place, 'content/certificates/CT-1.yaml')
    const other = join(place, 'content/shipments/SH-2.yaml')
    writeFileSync(other, head.replace('SH-1', 'SH-2') + 'contents:\n  - { lot: EB-1, mass: 1 g }\n')
    writeFileSync(order, `${readFileSync(order, 'utf8').trimEnd()}\nshipment: SH-2\n`)
    expect((await lotfolio(['ship', 'SH-1'], place)).stderr).toContain(
      'EB-1 has no certificate that stands'
    )
    writeFileSync(order, readFileSync(order, 'utf8').replace('SH-2', 'SH-1'))
    await done(place, 'ship', 'SH-1')
  })
})
