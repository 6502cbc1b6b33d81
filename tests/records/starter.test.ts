import fc from 'fast-check'
import { expect, test } from 'vitest'
import { buildDocuments } from '../../src/pipeline.ts'
import type { Problem } from '../../src/problem.ts'
import { parseRecord } from '../../src/records/document.ts'
import { starterWorkshop } from '../../src/records/starter.ts'

const answers = {
  name: 'Hillside Flake',
  address: ['1 Yard Lane', 'Hillside'],
  email: 'papers@hillside.example.org',
  telephone: '555 0100',
  paper: 'A4' as const,
  role: 'quality manager',
  person: 'A. Maker',
  from: '2026-03-01'
}

const recordsOf = (given: typeof answers) =>
  [...starterWorkshop(given)]
    .filter(([path]) => path.endsWith('.yaml'))
    .map(([path, text]) => ({ path: `my-workshop/${path}`, text }))

const codesIn = ({ problems }: { readonly problems: readonly Problem[] }) =>
  problems.map(({ code, field }) => `${code} ${field.join('.')}`)

/** What setting up leaves to its author, of what readers see. */
const toWrite = ['PLACEHOLDER description', 'PLACEHOLDER conditions']

test('a workshop just set up has two texts to be written, and one draft', () => {
  const { site, problems } = buildDocuments(recordsOf(answers), { edition: 'workshop' })
  expect(codesIn({ problems })).toEqual(toWrite)
  expect(site?.drafts.map(({ lot }) => lot)).toEqual(['EB-1'])
  expect(site?.producer.name).toBe('Hillside Flake')
  expect(site?.asOf).toBe('2026-03-01')
})

test('a method still to be written is no longer asked for once a later edition says it', () => {
  const files = recordsOf(answers)
  const method = files.find(({ path }) => path.includes('/methods/'))!
  const later = method.text
    .replace(/^edition: 1$/mu, 'edition: 2')
    .replace(/^conditions: .*$/mu, 'conditions: 1 g at 950 °C for 20 s')
    .replace(/^valid-from: .*$/mu, 'valid-from: 2026-03-02')
  for (const order of ['a', 'z']) {
    const path = `my-workshop/methods/${order}.yaml`
    const { problems } = buildDocuments([...files, { path, text: later }], { edition: 'workshop' })
    expect(codesIn({ problems })).toEqual(['PLACEHOLDER description'])
  }
})

/** Every sign of Unicode but controls, formats, surrogates and what is not assigned. */
const printable = Array.from({ length: 0x110000 }, (_, code) => code)
  .filter(code => code < 0xd800 || code > 0xdfff)
  .map(code => String.fromCodePoint(code))
  .filter(sign => !/\p{C}/u.test(sign))

test('whatever is answered is read back to the letter', () => {
  const sign = fc.nat(printable.length - 1).map(index => printable[index]!)
  const line = fc
    .array(sign, { minLength: 1, maxLength: 41 })
    .map(signs => signs.join('').trim())
    .filter(text => text !== '')
  fc.assert(
    fc.property(line, line, (name, person) => {
      const [producer] = recordsOf({ ...answers, name, person })
      const parsed = parseRecord(producer!)
      expect(parsed.ok && parsed.value.data).toMatchObject({ name, roles: [{ name: person }] })
    })
  )
})

test('nothing of the demo is in it', () => {
  const text = [...starterWorkshop(answers).values()].join('\n')
  expect(text).not.toMatch(/Ossenfold|EB-26|flake-250/u)
})

test('a leap day’s calibration falls due on the 28th', () => {
  const balance = starterWorkshop({ ...answers, from: '2024-02-29' }).get('instruments/BAL-1.yaml')
  expect(balance).toContain('due: 2025-02-28')
})

test('nothing stands on a paper that nobody has said: no calibration, no instruction to the author', () => {
  const records = recordsOf(answers)
  for (const { path, text } of records) {
    const said = text.replace(/^#.*$/gmu, '')
    expect(said, path).not.toMatch(/^calibration:|say here/mu)
  }
})

test('a calibration is written by taking out the # before it', () => {
  const records = recordsOf(answers).map(({ path, text }) => ({
    path,
    text: text.replace(/^# (?= |calibration:)/gmu, '')
  }))
  expect(records.filter(({ text }) => /^calibration:\n {2}against:/mu.test(text))).toHaveLength(2)
  expect(codesIn(buildDocuments(records, { edition: 'workshop' }))).toEqual(toWrite)
})

test('readings stand on one line each, with room to write in', () => {
  const batch = starterWorkshop(answers).get('batches/EB-1.yaml')
  expect(batch?.match(/^ {6}- \{ mass: , volume: \}$/gmu)).toHaveLength(3)
  expect(batch).toContain('\nproduct: { mass: }\n')
})
