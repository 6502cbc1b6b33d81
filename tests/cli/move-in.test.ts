import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { differences, lotfolio, smallWorkplace, tree } from '../site/workplace.ts'

const mapping = `id: old
fills: batch
file: { decimal: comma }
columns:
  - { column: Los, to: lot }
  - { column: Datum, to: made, date: day-month-year }
  - { column: Graphit, to: charge.1.mass, unit: g }
  - { column: Produkt, to: product.mass, unit: g }
  - { column: Asche, to: reported.ash.value, unit: '%' }
  - { column: Tag, to: reported.ash.date, date: day-month-year }
  - { column: Bemerkung, to: notes }
set:
  grade: FK-1
  charge.1.material: GR-1
  charge.1.as: graphite
  reported.ash.own: yes
  reported.ash.report: OLD-1
  reported.ash.without-uncertainty: the old list states none
`

const list = `Los;Datum;Graphit;Produkt;Asche;Tag;Bemerkung
EB-0-1;3.2.2026;25,00;29,62;0,53;9.2.2026;first of all
EB-0-2;4.2.2026;25,00;29,4?;;;
EB-0-3;5.2.2026;25,00;29,71;;;
EB-0-3;5.2.2026;25,00;29,71;;;
EB-1;6.2.2026;1,00;1,10;;;
;6.2.2026;1,00;1,10;;;
EB-0-4;2026-02-06;1,00;1,10;;;
EB-0-5;7.2.2026;;1,20;;;
EB-0-6;8.2.2026;1,00;;;;
`

function placeWith(text = list): string {
  const place = smallWorkplace()
  mkdirSync(join(place, 'content', 'mappings'))
  writeFileSync(join(place, 'content', 'mappings', 'old.yaml'), mapping)
  writeFileSync(join(place, 'old.csv'), text)
  return place
}

async function movedIn(place: string, ...args: string[]) {
  const before = tree(place)
  const run = await lotfolio(['move-in', 'old.csv', '--mapping', 'old', ...args], place)
  return { ...run, changed: differences(before, tree(place)) }
}

test('an old list becomes records, and each line that cannot is told', async () => {
  const place = placeWith()
  const shown = await movedIn(place)
  expect(shown.changed).toEqual([])
  const { status, stdout, stderr, changed } = await movedIn(place, '--write')
  expect({ status, changed }).toEqual({
    status: 1,
    changed: ['EB-0-1', 'EB-0-3', 'EB-0-5'].map(lot => `content/batches/${lot}.yaml`)
  })
  expect(readFileSync(join(place, 'content', 'batches', 'EB-0-1.yaml'), 'utf8')).toBe(
    `# yaml-language-server: $schema=../../schemas/batch.json
lot: EB-0-1
made: 2026-02-03
notes: first of all
grade: FK-1
charge:
  - { mass: 25.00 g, material: GR-1, as: graphite }
product: { mass: 29.62 g }
reported:
  ash: { value: 0.53 %, date: 2026-02-09, own: yes, report: OLD-1, without-uncertainty: the old list states none }
`
  )
  expect(stderr).toMatch(/old\.csv:3:23 \w+\n {2}Produkt: /u)
  expect(stderr).toContain('old.csv:5:1 DUPLICATE_ID')
  expect(stderr).toContain('old.csv:7:1 MISSING_FIELD')
  expect(stderr).toContain('old.csv:8:8 BAD_DATE')
  expect(stderr).toMatch(/content\/batches\/EB-0-6\.yaml:\d+:\d+ MISSING_FIELD\n {2}product: /u)
  expect(stdout).toContain(`line 3, EB-0-2: left out, see above
line 5, EB-0-3: left out, see above
line 6, EB-1: is there already, and stays as it is
line 7, no number: left out, see above
line 8, EB-0-4: left out, see above
line 10, EB-0-6: left out, see above
9 lines read: 3 records, 6 left out
`)
  expect((await lotfolio(['check'], place)).stdout).toContain('no errors')
  const again = await movedIn(place, '--write')
  expect(again).toMatchObject({ status: 1, changed: [] })
  expect(again.stdout).toContain('line 2, EB-0-1: is there already')
})

test('as drafts they may lack what the list does not have', async () => {
  const place = placeWith(list.split('\n').slice(0, 2).join('\n') + '\nEB-0-6;8.2.2026;1,00;;;;\n')
  const { status, changed } = await movedIn(place, '--draft', '--write')
  expect({ status, changed }).toEqual({
    status: 0,
    changed: ['content/batches/EB-0-1.yaml', 'content/batches/EB-0-6.yaml']
  })
  expect((await lotfolio(['check'], place)).stdout).toContain('no errors, no warnings, 2 drafts')
})

test('a field that such a record has not is told in the mapping', async () => {
  const place = placeWith()
  writeFileSync(
    join(place, 'content', 'mappings', 'old.yaml'),
    mapping.replace('product.mass', 'product.weight')
  )
  const { status, stderr, changed } = await movedIn(place, '--write')
  expect({ status, changed }).toEqual({ status: 1, changed: [] })
  expect(stderr).toMatch(/^content\/mappings\/old\.yaml:8:28 UNKNOWN_FIELD/u)
})

describe('figures of the list itself', () => {
  const figures = `  - { column: Ausbeute, figure: mass-yield, unit: '%' }\nset:`
  const placeOf = (rows: readonly string[]) => {
    const place = placeWith(
      `Los;Datum;Graphit;Produkt;Asche;Tag;Bemerkung;Ausbeute\n${rows.join('\n')}\n`
    )
    writeFileSync(join(place, 'content', 'mappings', 'old.yaml'), mapping.replace('set:', figures))
    return place
  }

  test('agree to the last digit, or are told with ours; those that are none are told', async () => {
    // 29.62 / 25.00 is 118.48 %.
    const place = placeOf([
      'EB-0-1;3.2.2026;25,00;29,62;;;;118,5',
      'EB-0-2;3.2.2026;25,00;29,62;;;;118,4',
      'EB-0-3;3.2.2026;25,00;29,62;;;;118,3',
      'EB-0-4;3.2.2026;25,00;29,62;;;;=D5/C5',
      'EB-0-5;3.2.2026;25,00;29,62;;;;#DIV/0!',
      'EB-0-6;3.2.2026;25,00;29,62;;;;'
    ])
    const { status, stdout, stderr } = await movedIn(place, '--write')
    expect(status).toBe(0)
    expect(stdout).toContain(
      'Figures of the list: 2 of 3 as worked out here, to the last digit\n' +
        '  line 4, EB-0-3: mass yield is 118.3 % in the list, 118.5 % by its readings\n' +
        'Wrote 6 records\n'
    )
    expect(stderr.match(/NOT_A_QUANTITY/gu)).toHaveLength(2)
  })

  test('of a lot without such readings are told as such', async () => {
    const place = placeOf(['EB-0-1;3.2.2026;25,00;29,62;;;;0,31'])
    const path = join(place, 'content', 'mappings', 'old.yaml')
    writeFileSync(
      path,
      readFileSync(path, 'utf8').replace('figure: mass-yield', 'figure: free-acid')
    )
    expect((await movedIn(place)).stdout).toContain(
      'line 2, EB-0-1: free acidity as H₂SO₄ is 0.31 % in the list, and has no readings here'
    )
  })

  test('fill no field, and are of lists alone', async () => {
    const place = placeOf(['EB-0-1;3.2.2026;25,00;29,62;;;;118,5'])
    const path = join(place, 'content', 'mappings', 'old.yaml')
    const text = readFileSync(path, 'utf8')
    const refused = async (changed: string) => {
      writeFileSync(path, changed)
      return (await lotfolio(['check'], place)).stdout
    }
    expect(await refused(text.replace('figure: mass', 'to: notes, figure: mass'))).toContain(
      'is held against ours, and fills no field'
    )
    expect(await refused(text.replace('fills: batch', 'fills: free-acid'))).toContain(
      'is held against a lot of an old list alone'
    )
  })
})

test('columns that are not there are told at once', async () => {
  const place = placeWith(list.replace('Graphit;Produkt', 'Graphit g;Produkt g'))
  const { stderr } = await movedIn(place)
  expect(stderr.match(/MISSING_COLUMN/gu)).toHaveLength(1)
  expect(stderr).toContain("no column is headed 'Graphit' or 'Produkt'")
})
