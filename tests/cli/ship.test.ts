/** lotfolio ship: what a customer gets, and where it never goes. */

import { execFileSync } from 'node:child_process'
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, inject, test } from 'vitest'
import { faultsOf } from '../pdf/rules.ts'
import { done, putShipment, shipment } from '../site/issuing.ts'
import {
  demoWorkplace,
  lotfolio,
  namesIn,
  smallWorkplace,
  tree,
  workplace
} from '../site/workplace.ts'
import { requireTool } from '../tools.ts'

const tools = requireTool('pdftotext', 'poppler-utils')

/** The small workshop with EB-1's certificate issued: once for all tests, each of which takes a copy. */
const issued = mkdtempSync(join(inject('runFolder'), 'issued '))

/** A workshop with one shipment, and EB-1's certificate issued. */
async function shipping(text = shipment.whole): Promise<string> {
  const place = workplace()
  if (namesIn(issued).length === 0) {
    const first = smallWorkplace()
    await done(first, 'issue', 'EB-1', '--date', '2026-03-01')
    cpSync(first, issued, { recursive: true })
  }
  cpSync(issued, place, { recursive: true })
  putShipment(place, text)
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
      ['CT-1-r1-SH-1.pdf', 2],
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

  test('a copy checks as what was sent, and as what became of it', async () => {
    const place = await shipping()
    await done(place, 'ship', 'SH-1', '--date', '2026-03-02')
    const path = join(place, 'archive', 'CT-1-r1-SH-1.pdf')
    const told = async (file: string, ...args: string[]) =>
      (await lotfolio(['verify', file, ...args], place)).stdout.split('\n')[0]
    expect(readFileSync(path).equals(readFileSync(out(place, 'CT-1-r1-SH-1.pdf')))).toBe(true)
    expect(await told(path)).toBe('Genuine')
    expect((await lotfolio(['verify', 'archive/CT-1-r1.pdf'], place)).stdout).toContain(
      'begins with the 1 line that the proof was taken from'
    )
    expect(await told(path, '--offline')).toBe('Unknown')
    await done(place, 'build')
    const register = join(place, '_site', 'register')
    const site = ['--register', join(register, 'register.json')]
    expect(await told(path, ...site)).toBe('Unknown')
    expect(await told(path, ...site, '--copies', join(register, 'copies.json'))).toBe('Genuine')

    const bytes = readFileSync(path)
    bytes[bytes.length >> 1]! ^= 1
    writeFileSync(join(place, 'flipped.pdf'), bytes)
    expect(await told('flipped.pdf')).toBe('Altered')
    const json = 'content/register/copies/CT-1-r1-SH-1.json'
    expect(await told(json)).toBe('Genuine')
    const text = readFileSync(join(place, json), 'utf8')
    writeFileSync(join(place, 'raised.json'), text.replace('PO 1', 'PO 2'))
    expect(await told('raised.json')).toBe('Altered')
    writeFileSync(
      join(place, 'invented.json'),
      text.replace('"shipment":"SH-1"', '"shipment":"SH-2"')
    )
    expect(await told('invented.json')).toBe('Unknown')

    await done(place, 'withdraw', 'CT-1', '--reason', 'acid rises', '--date', '2026-03-03')
    expect(await told(path)).toBe('Withdrawn')
    // A list from before the register grew is not passed off as that of today.
    const earlier = join(place, 'copies-earlier.json')
    cpSync(join(register, 'copies.json'), earlier)
    await done(place, 'build')
    expect(await told(path, ...site, '--copies', join(register, 'copies.json'))).toBe('Withdrawn')
    const { stdout } = await lotfolio(['verify', path, ...site, '--copies', earlier], place)
    expect(stdout).toMatch(/^Unknown[^]*was not published with the register given here/u)
  })

  test('another copy for the same shipment needs a reason, and the first is superseded', async () => {
    const place = await shipping()
    const day = ['--date', '2026-03-02']
    await done(place, 'ship', 'SH-1', ...day)
    const record = join(place, 'content', 'shipments', 'SH-1.yaml')
    writeFileSync(record, readFileSync(record, 'utf8').replace('PO 1', 'PO 17'))
    const before = tree(join(place, 'content', 'register', 'copies'))
    const { status, stderr } = await lotfolio(['ship', 'SH-1', ...day], place)
    const differs =
      'CT-1-r1-SH-1 was sent on 2026-03-02 and said otherwise. Order: was PO 1, now PO 17.'
    expect(status).toBe(1)
    expect(stderr).toContain(differs)
    const checked = await lotfolio(['check'], place)
    expect(checked.status).toBe(0)
    expect(checked.stdout).toMatch(/^content\/shipments\/SH-1\.yaml:1:9 COPY_DIFFERS \(warning\)/u)
    expect(checked.stdout).toContain(differs.replace(/\.$/u, ''))
    // On the day before, nothing had been sent.
    expect(await done(place, 'check', '--as-of', '2026-03-01')).not.toContain('COPY_DIFFERS')
    expect(tree(join(place, 'content', 'register', 'copies'))).toEqual(before)

    await done(place, 'ship', 'SH-1', ...day, '--reason', 'order number corrected')
    const second = join(place, 'archive', 'CT-1-r1-SH-1-copy-2.pdf')
    const told = async (file: string) => (await lotfolio(['verify', file], place)).stdout
    expect(await told(second)).toContain('Genuine')
    expect(await told(join(place, 'archive', 'CT-1-r1-SH-1.pdf'))).toMatch(
      /^Superseded[^]*Another copy took its place/u
    )
    const bytes = tree(join(place, 'content'))
    await done(place, 'ship', 'SH-1')
    expect(tree(join(place, 'content'))).toEqual(bytes)
  })

  test('a copy whose certificate or shipment is another now is told of, until it is sent anew', async () => {
    const place = await shipping()
    const day = ['--date', '2026-03-02']
    const told = async () => (await done(place, 'check')).match(/COPY_\w+|sent on[^\n]*/gu)
    await done(place, 'ship', 'SH-1', ...day)
    expect(await told()).toBeNull()
    await done(place, 'issue', 'EB-1', '--reason', 'date corrected', ...day)
    expect(await told()).toEqual([
      'COPY_SUPERSEDED',
      'sent on 2026-03-02, and CT-1 has a later revision since: the customer holds the old one'
    ])
    await done(place, 'ship', 'SH-1', ...day)
    expect(await told()).toBeNull()
    rmSync(join(place, 'content', 'shipments', 'SH-1.yaml'))
    expect(await told()).toEqual(
      Array(2)
        .fill(['COPY_DIFFERS', 'sent on 2026-03-02, and the records have that shipment no more'])
        .flat()
    )
  })

  test('a preview says so, and enters nothing', async () => {
    const place = await shipping()
    const before = tree(join(place, 'content'))
    await done(place, 'ship', 'SH-1', '--preview')
    expect(tree(join(place, 'content'))).toEqual(before)
    if (tools)
      expect(printed(out(place, 'CT-1-r1-SH-1.pdf'))).toContain(
        'Preview of a customer’s copy, not sent'
      )
    expect((await lotfolio(['verify', out(place, 'CT-1-r1-SH-1.pdf')], place)).stdout).toContain(
      'carries no certificate data'
    )
  })

  test('copies sent on two computers come to one chain', async () => {
    const [ours, theirs] = [await shipping(), workplace()]
    cpSync(ours, theirs, { recursive: true })
    await done(theirs, 'ship', 'SH-1', '--date', '2026-03-02')
    const folder = join('content', 'register', 'copies')
    const other = tree(join(theirs, folder))
    expect(await done(ours, 'join', join(theirs, 'content'), '--date', '2026-03-02')).toContain(
      "Taken in: customer's copy CT-1-r1-SH-1\n"
    )
    expect(tree(join(ours, folder))).toEqual(other)
    expect(tree(join(theirs, folder))).toEqual(other)
    const copy = join(theirs, 'archive', 'CT-1-r1-SH-1.pdf')
    expect((await lotfolio(['verify', copy], ours)).stdout).toMatch(/^Genuine/u)
  })

  test('a copy dropped or changed among the records stops everything', async () => {
    const place = await shipping()
    await done(place, 'ship', 'SH-1', '--date', '2026-03-02')
    await done(place, 'build')
    const folder = join(place, 'content', 'register', 'copies')
    const log = readFileSync(join(folder, 'log.jsonl'), 'utf8')
    const copy = readFileSync(join(folder, 'CT-1-r1-SH-1.json'), 'utf8')
    const codes = async (command: string) =>
      ((await lotfolio([command], place)).stdout + (await lotfolio([command], place)).stderr).match(
        /REGISTER_\w+/gu
      )

    writeFileSync(join(folder, 'CT-1-r1-SH-1.json'), copy.replace('PO 1', 'PO 2'))
    expect(await codes('check')).toContain('REGISTER_DOCUMENT_CHANGED')
    writeFileSync(join(folder, 'CT-1-r1-SH-1.json'), copy)

    writeFileSync(join(folder, 'log.jsonl'), log.split('\n').slice(0, 1).join('\n') + '\n')
    expect(await codes('check')).toContain('REGISTER_NO_LINE')
    // With its document gone as well, only the site in place knows.
    rmSync(join(folder, 'CT-1-r1-SH-1.json'))
    expect(await codes('check')).toBeNull()
    expect(await codes('build')).toContain('REGISTER_SHORTENED')
  })

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
    const place = await shipping(shipment.head + shipment.contents + shipment.packing + decided)
    await done(place, 'ship', 'SH-1')
    const list = printed(out(place, 'SH-1-packing-list.pdf'))
    expect(list).toContain(
      'Not dangerous goods: decided by A. Adviser on 1 February 2026, valid until 31 January 2027.'
    )
    expect(list).toContain('Basis: report 7; tests: N.1.')
    expect(list).toContain('The decision is the adviser’s; the producer reports it.')
  })

  test.runIf(tools)('writes the packing list in the shipment’s language, or nothing', async () => {
    const decided =
      'language: de\ntransport: { is: not dangerous goods, by: A. Adviser, basis: report 7, tests: [N.1], on: 2026-02-01, until: 2027-01-31 }\n'
    const place = await shipping(shipment.head + shipment.contents + shipment.packing + decided)
    const run = await lotfolio(['ship', 'SH-1'], place)
    expect(run.status).toBe(1)
    expect(run.stderr).toContain(
      "the packing list has no text in 'de' for 'report 7': add it to translations/de.yaml"
    )
    expect(existsSync(out(place))).toBe(false)
    const lacking = [...run.stderr.matchAll(/for '(.*?)': add it/gu)].map(([, text]) => text!)
    mkdirSync(join(place, 'content', 'translations'), { recursive: true })
    writeFileSync(
      join(place, 'content', 'translations', 'de.yaml'),
      `language: de\ntexts:\n${lacking.map((text, n) => `  - { text: '${text}', as: 'Übersetzt ${n}' }\n`).join('')}`
    )
    await done(place, 'ship', 'SH-1')
    const list = printed(out(place, 'SH-1-packing-list.pdf'))
    for (const said of [
      'Packliste SH-1',
      'Nettomasse',
      'Gebinde Art Charge Produkt',
      'Übersetzt 0',
      'am 1. Februar 2026, gültig bis 31. Januar 2027.',
      'Ende der'
    ])
      expect(list).toContain(said)
    expect(list).not.toMatch(/\b(?:the|Lot|Packages|Container|Keep|Store|report 7)\b/u)
    for (const name of ['SH-1-packing-list.pdf', 'SH-1-papers.pdf'])
      expect(readFileSync(out(place, name)).toString('latin1')).toMatch(/\/Lang \(de\)/u)
    expect(faultsOf(readFileSync(out(place, 'SH-1-packing-list.pdf')), 0, 'de')).toEqual([])
  })

  test.runIf(tools)(
    'a label for a container, by the rules and in the languages of the shipment',
    async () => {
      const place = demoWorkplace()
      await done(place, 'ship', 'SH-26-06')
      const folder = join(place, 'private', 'shipments', 'SH-26-06')
      const labels = ['label-C-0601.pdf', 'label-C-0602.pdf']
      expect(namesIn(folder).filter(name => name.startsWith('label'))).toEqual(labels)
      for (const name of labels) {
        const label = printed(join(folder, name))
        expect(label).toContain(`Container / Gebinde: ${name.slice(6, 12)}`)
        expect(label).toContain('Nominal quantity / Nennmenge: 10.0 g')
        expect(label).toContain('Lot / Charge: EB-26-010')
        expect(label).not.toContain('Brindlecroft')
      }
      const whole = join(folder, 'SH-26-06-papers.pdf')
      expect(printed(whole)).toContain('Container / Gebinde: C-0602')
      expect(faultsOf(readFileSync(whole), 1)).toEqual([])
    }
  )

  test('tells everything that is missing, and writes nothing', async () => {
    const place = await shipping(
      `${shipment.head}contents:\n  - { lot: EB-1, mass: 5 g }\n  - { lot: FL-1, mass: 4 g }\n`
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
    writeFileSync(
      other,
      shipment.head.replace('SH-1', 'SH-2') + 'contents:\n  - { lot: EB-1, mass: 1 g }\n'
    )
    writeFileSync(order, `${readFileSync(order, 'utf8').trimEnd()}\nshipment: SH-2\n`)
    expect((await lotfolio(['ship', 'SH-1'], place)).stderr).toContain(
      'EB-1 has no certificate that stands'
    )
    writeFileSync(order, readFileSync(order, 'utf8').replace('SH-2', 'SH-1'))
    await done(place, 'ship', 'SH-1')
  })
})
