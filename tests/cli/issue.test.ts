/** Issuing, correcting and withdrawing certificates, as a workshop does it. */

import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { done, eventsOf, putInRegister, refused, registerOf, workshopOf } from '../site/issuing.ts'
import { lotfolio, namesIn, tree, workplace } from '../site/workplace.ts'

const day = ['--date', '2026-03-01']
const numbers = (place: string) =>
  eventsOf(place).flatMap(({ is, number }) => (is === 'issued' ? [number] : []))

describe('issue', () => {
  test('takes the order that waits, and the next number for a lot without one', async () => {
    const place = workshopOf('EB-2')
    expect(await done(place, 'issue', 'EB-1', ...day)).toMatch(
      /^Issued CT-1, revision 1, on EB-1\nFingerprint (?:[0-9a-f]{4} ?){4}; not signed\nThe paper: archive\/CT-1-r1\.pdf; /u
    )
    await done(place, 'issue', 'EB-2', ...day)
    expect(numbers(place)).toEqual(['CT-1', 'CT-2'])
    expect(namesIn(join(place, 'content', 'certificates'))).toEqual(['CT-1.yaml', 'CT-2-r1.yaml'])
    expect(namesIn(join(place, 'archive'))).toEqual(['CT-1-r1.pdf', 'CT-2-r1.pdf'])
    expect(Object.keys(registerOf(place))).toEqual(['CT-1-r1.json', 'CT-2-r1.json', 'log.jsonl'])
    expect(await done(place, 'check')).toMatch(/no errors/u)
  })

  test('a second time needs a reason, and then tells what changed', async () => {
    const place = workshopOf()
    await done(place, 'issue', 'EB-1', ...day)
    expect(await refused(place, 'issue', 'EB-1', ...day)).toContain(
      'CT-1, revision 1, which stands; a correction needs --reason'
    )
    const batch = join(place, 'content', 'batches', 'EB-1.yaml')
    writeFileSync(batch, readFileSync(batch, 'utf8').replace('volume: 133', 'volume: 132'))
    await done(place, 'issue', 'EB-1', '--reason', 'a reading was misread', ...day)
    const frozen = registerOf(place)['CT-1-r2.json']!
    expect(frozen).toContain('a reading was misread')
    const { certificate } = JSON.parse(frozen) as { certificate: { changes: string[] } }
    expect(certificate.changes.join('\n')).toMatch(/[Ee]xpansion volume/u)
    expect(eventsOf(place).map(({ is }) => is)).toEqual(['issued', 'drawn', 'amended', 'drawn'])
  })

  test('of a type of EN 10204, for a shipment that names an order; a correction keeps it', async () => {
    const place = workshopOf('EB-2')
    const producer = join(place, 'content', 'producer.yaml')
    const typed = ['issue', 'EB-2', '--type', '3.1', ...day]
    mkdirSync(join(place, 'content', 'shipments'))
    writeFileSync(
      join(place, 'content', 'shipments', 'SH-1.yaml'),
      'number: SH-1\nsent: 2026-03-05\ncustomer: Brask Seals\norder: PO 1\ncontents:\n  - { lot: EB-2, mass: 5 g }\n'
    )
    const told = await lotfolio([...typed, '--shipment', 'SH-1'], place)
    expect(told).toMatchObject({ status: 1, stdout: 'Nothing issued\n' })
    expect(told.stderr).toContain("leave 'type' out for a certificate of analysis")
    const text = readFileSync(producer, 'utf8')
    writeFileSync(
      producer,
      text.replace('Varnholt }', 'Varnholt, independent-of-manufacturing: yes }')
    )
    expect(await refused(place, ...typed)).toContain("name the shipment under 'shipment:'")
    await done(place, ...typed, '--shipment', 'SH-1')
    await done(place, 'issue', 'EB-2', '--reason', 'a word was wrong', ...day)
    for (const revision of [1, 2]) {
      expect(registerOf(place)[`CT-2-r${revision}.json`]).toContain('Inspection certificate 3.1')
      const record = join(place, 'content', 'certificates', `CT-2-r${revision}.yaml`)
      expect(readFileSync(record, 'utf8')).toMatch(/type: "3\.1"\nshipment: SH-1\n/u)
    }
    const other = ['issue', 'EB-1', '--type', '2.1', ...day]
    expect(await refused(place, ...other)).toContain('leave out --type')
  })

  test.for([
    ['an unknown lot', ['EB-9'], 'no record has the lot number EB-9'],
    ['a reason without a certificate', ['FL-1', '--reason', 'x'], 'there is nothing to correct'],
    ['a number in use', ['EB-2', '--number', 'ct-1'], 'taken'],
    ['another number than the order', ['EB-1', '--number', 'CT-7'], 'leave out --number'],
    ['another role than the order', ['EB-1', '--by', 'owner'], 'leave out --by'],
    ['a day before the order', ['EB-1', '--date', '2026-02-06'], 'cannot be issued on'],
    ['a key that nobody has', ['EB-1', '--key', '0123456789abcdef'], 'is no key in use']
  ] as [what: string, args: string[], line: string][])(
    'is refused for %s',
    async ([what, args, line]) => {
      const place = workshopOf('EB-2')
      if (what === 'a number in use') await done(place, 'issue', 'EB-1', ...day)
      const before = tree(join(place, 'content'))
      const dated = args.includes('--date') ? args : [...args, ...day]
      expect(await refused(place, 'issue', ...dated)).toContain(line)
      expect(tree(join(place, 'content'))).toEqual(before)
    }
  )

  test.for([
    ['in quarantine', '  - { is: quarantine, on: 2026-02-06, by: quality manager, because: x }'],
    [
      'called back',
      '  - { is: released, on: 2026-02-06, by: quality manager }\n  - { is: withdrawn, on: 2026-02-20, by: quality manager, because: x }'
    ]
  ])('is refused for a lot %s', async ([, status = '']) => {
    const place = workshopOf()
    const batch = join(place, 'content', 'batches', 'EB-1.yaml')
    writeFileSync(batch, readFileSync(batch, 'utf8').replace(/ {2}- \{ is: released.*/u, status))
    expect(await refused(place, 'issue', 'EB-1', ...day)).not.toBe('')
    expect(eventsOf(place)).toEqual([])
  })

  test('is refused where a figure fails its limit', async () => {
    const place = workshopOf()
    const batch = join(place, 'content', 'batches', 'EB-1.yaml')
    writeFileSync(
      batch,
      readFileSync(batch, 'utf8').replaceAll(/volume: 1\d\d mL/gu, 'volume: 51 mL')
    )
    const run = await lotfolio(['issue', 'EB-1', ...day], place)
    expect(run).toMatchObject({ status: 1, stdout: 'Nothing issued\n' })
    expect(run.stderr).toMatch(/NOT_RELEASABLE|NOT_CERTIFIABLE/u)
    expect(eventsOf(place)).toEqual([])
  })

  test('is refused for a day before the last line, and writes nothing', async () => {
    const place = workshopOf('EB-2')
    await done(place, 'issue', 'EB-1', ...day)
    const before = tree(place)
    expect(await refused(place, 'issue', 'EB-2', '--date', '2026-02-28')).toContain('comes before')
    expect(tree(place)).toEqual(before)
  })

  test('clears up what a stopped run left, and never over a document that was issued', async () => {
    const place = workshopOf('EB-2')
    await done(place, 'issue', 'EB-1', ...day)
    const sound = registerOf(place)
    for (const name of ['CT-1-r1.json.pending', 'CT-9-r1.json.pending', 'log.jsonl.next'])
      putInRegister(place, name, 'left')
    writeFileSync(join(place, 'archive', '.lotfolio-next'), 'left')
    expect(await done(place, 'check')).toMatch(/no errors/u)
    await done(place, 'issue', 'EB-2', ...day)
    expect(registerOf(place)).toMatchObject({ 'CT-1-r1.json': sound['CT-1-r1.json'] })
    expect(Object.keys(registerOf(place))).toHaveLength(3)
    expect(namesIn(join(place, 'archive'))).toEqual(['CT-1-r1.pdf', 'CT-2-r1.pdf'])
  })

  test('a document under its pending name gets its own where the log names it', async () => {
    const place = workshopOf('EB-2')
    await done(place, 'issue', 'EB-1', ...day)
    const sound = registerOf(place)
    putInRegister(place, 'CT-1-r1.json.pending', sound['CT-1-r1.json']!)
    rmSync(join(place, 'content', 'register', 'CT-1-r1.json'))
    expect(await done(place, 'check')).toMatch(/no errors/u)
    await done(place, 'issue', 'EB-2', ...day)
    expect(registerOf(place)['CT-1-r1.json']).toBe(sound['CT-1-r1.json'])
    expect(Object.keys(registerOf(place))).toHaveLength(3)
  })

  test('the papers of an issued lot are those of the archive and of the site', async () => {
    const place = workshopOf()
    await done(place, 'issue', 'EB-1', ...day)
    await done(place, 'papers', 'EB-1')
    await done(place, 'build')
    const [paper] = [tree(join(place, 'archive'))['CT-1-r1.pdf']]
    expect(paper).toBeDefined()
    expect(tree(join(place, 'papers'))['CT-1-r1.pdf']).toBe(paper)
    expect(Object.values(tree(join(place, '_site')))).toContain(paper)
  })
})

describe('withdraw', () => {
  test('says so for ever, and nothing corrects it', async () => {
    const place = workshopOf()
    await done(place, 'issue', 'EB-1', ...day)
    const withdraw = ['withdraw', 'ct-1', '--reason', 'acid rises', ...day]
    expect(await done(place, ...withdraw)).toBe('Withdrawn: CT-1, revision 1, on EB-1\n')
    expect(await refused(place, ...withdraw)).toContain('is withdrawn and can no longer be')
    expect(await refused(place, 'withdraw', 'CT-8', '--reason', 'x')).toContain(
      'no certificate CT-8'
    )
    expect(await refused(place, 'issue', 'EB-1', '--reason', 'x', ...day)).toContain(
      'nothing to correct'
    )
  })
})

test.for([
  ['issue', 'EB-1'],
  ['withdraw', 'CT-1', '--reason', 'x'],
  ['keys'],
  ['keys', '--make'],
  ['sign'],
  ['join', 'other']
])('%j without records is one plain line, and makes no folder', async args => {
  const place = workplace()
  const { status, stderr } = await lotfolio(args, place, { LOTFOLIO_KEYS: `${place}-keys` })
  expect({ status, stderr }).toEqual({
    status: 1,
    stderr: `lotfolio: ${join(place, 'content')}: does not exist\n`
  })
  expect(namesIn(place)).toEqual([])
})
