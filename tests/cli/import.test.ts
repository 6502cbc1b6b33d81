import { mkdirSync, readFileSync, truncateSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { differences, lotfolio, smallWorkplace, tree } from '../site/workplace.ts'

const draft = `# the second batch
lot: EB-2
grade: FK-1
made: 2026-02-09
draft: yes
tests:
  expansion-volume:
    tested: 2026-02-10
    readings:
      - { mass: , volume: } # by the window
      - { mass: , volume: }
`

const mapping = `id: cylinder
fills: expansion-volume
file: { decimal: comma }
columns:
  - { column: m, to: mass, unit: g }
  - { column: V, to: volume, unit: mL }
`

/** A workplace with a draft, a mapping, and a file of readings. */
function placeWith(file: string | Uint8Array = 'm;V\n0,502;131\n0,498;128\n'): string {
  const place = smallWorkplace()
  mkdirSync(join(place, 'content', 'mappings'))
  writeFileSync(join(place, 'content', 'batches', 'EB-2.yaml'), draft)
  writeFileSync(join(place, 'content', 'mappings', 'cylinder.yaml'), mapping)
  writeFileSync(join(place, 'readings.csv'), file)
  utimesSync(
    join(place, 'readings.csv'),
    new Date('2026-02-10T13:14:15Z'),
    new Date('2026-02-10T13:14:15Z')
  )
  return place
}

/** Run `lotfolio import` and tell which files it changed. */
async function imported(place: string, ...args: string[]) {
  const before = tree(place)
  const run = await lotfolio(['import', 'readings.csv', ...args], place)
  return { ...run, changed: differences(before, tree(place)) }
}

const recordIn = (place: string) =>
  readFileSync(join(place, 'content', 'batches', 'EB-2.yaml'), 'utf8')

const args = ['--lot', 'EB-2', '--test', 'expansion-volume']

test('import shows what it would write, and writes it when told to', async () => {
  const place = placeWith()
  const shown = await imported(place, ...args)
  expect(shown).toMatchObject({ status: 0, changed: [], stderr: '' })
  expect(shown.stdout).toContain(
    '-      - { mass: , volume: } # by the window\n-      - { mass: , volume: }\n+      - { mass: 0.502 g, volume: 131 mL } # by the window\n'
  )
  expect(shown.stdout).toMatch(/\nNothing written: add --write if this is right\n$/u)

  const written = await imported(place, ...args, '--write')
  expect(written).toMatchObject({ status: 0, changed: ['content/batches/EB-2.yaml'] })
  expect(written.stdout).toMatch(/\nWrote 2 readings to content\/batches\/EB-2\.yaml\n$/u)
  expect(recordIn(place)).toBe(
    `${draft
      .replace('{ mass: , volume: } #', '{ mass: 0.502 g, volume: 131 mL } #')
      .replace('{ mass: , volume: }', '{ mass: 0.498 g, volume: 128 mL }')}    sources:
      - { file: readings.csv, sha256: 73f29c9fc8ce0f9c1a5d6db1d5e1b5a0b2a8fd8e1c9e3f8c, written: 2026-02-10 13:14:15Z }
`.replace(/sha256: \w+/u, /sha256: \w{64}/u.exec(recordIn(place))![0])
  )
  expect((await lotfolio(['check'], place)).status).toBe(0)
  const again = await imported(place, ...args, '--write')
  expect(again).toMatchObject({ status: 1, changed: [] })
  expect(again.stderr).toContain('were taken over before')
})

test('import without a mapping takes the columns from its options, and saves them', async () => {
  const place = placeWith('Probe;m (g);Vol;Rem\n1;0,502;131;\n2;0,498;128;x\n')
  const map = ['--map', 'm=mass', '--map', 'Vol=volume mL', '--map', 'Probe=', '--map', 'Rem=']
  const { status, changed } = await imported(
    place,
    ...args,
    ...map,
    '--save',
    'cylinder-2',
    '--write'
  )
  expect({ status, changed }).toEqual({
    status: 0,
    changed: ['content/batches/EB-2.yaml', 'content/mappings/cylinder-2.yaml']
  })
  expect(readFileSync(join(place, 'content', 'mappings', 'cylinder-2.yaml'), 'utf8')).toBe(
    `# yaml-language-server: $schema=../../schemas/mapping.json
id: cylinder-2
fills: expansion-volume
columns:
  - { column: m, to: mass }
  - { column: Vol, to: volume, unit: mL }
  - { column: Probe }
  - { column: Rem }
`
  )
  expect((await lotfolio(['check'], place)).stdout).toContain('no errors')
})

test('import writes nothing that would not pass check', async () => {
  const place = placeWith('m;V\n0,502;131\n')
  const finished = draft.replace('draft: yes', 'product: { mass: 100 g }')
  writeFileSync(
    join(place, 'content', 'batches', 'EB-2.yaml'),
    finished.replace('tested: 2026-02-10', 'tested: 2026-01-10')
  )
  const { status, stdout, stderr, changed } = await imported(place, ...args, '--write')
  expect({ status, changed }).toEqual({ status: 1, changed: [] })
  expect(stdout).toMatch(/\nNothing written\n$/u)
  expect(stderr).toContain('content/batches/EB-2.yaml:8:13 DATE_ORDER')
})

test.for([
  [
    'a number that can be read two ways',
    'm;V\n1.234;131\n',
    /^readings\.csv:2:1 AMBIGUOUS_NUMBER/u
  ],
  ['an empty file', '', /^readings\.csv:1:1 NOT_A_TABLE/u],
  ['a picture', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0]), /^readings\.csv:1:1 NOT_A_TABLE/u]
] as const)('import refuses %s with exit code 1 and writes nothing', async ([, file, told]) => {
  const place = placeWith(file)
  const { status, stdout, stderr, changed } = await imported(place, ...args, '--write')
  expect({ status, stdout, changed }).toEqual({
    status: 1,
    stdout: 'Nothing written\n',
    changed: []
  })
  expect(stderr).toMatch(told)
})

test('import refuses 100 MB without reading them', async () => {
  const place = placeWith()
  truncateSync(join(place, 'readings.csv'), 100_000_000)
  const { status, stderr } = await imported(place, ...args)
  expect(status).toBe(1)
  expect(stderr).toBe(
    'lotfolio: readings.csv: has 100 MB, more than any list of readings; export the part needed\n'
  )
})

test.for([
  [['--lot', 'EB-9', '--test', 'sieve'], 1, 'no readable record has the lot number EB-9'],
  [['--lot', 'EB-2', '--test', 'sheets'], 1, "the record of a batch has no part 'sheets'"],
  [
    ['--lot', 'EB-2', '--test', 'ash'],
    1,
    "no mapping for 'ash' fits this file: say what each column is"
  ],
  [[...args, '--mapping', 'x'], 1, 'there is no sound mapping x'],
  [
    ['--lot', 'EB-2', '--test', 'ash', '--mapping', 'cylinder'],
    1,
    "the mapping cylinder fills 'expansion-volume', not 'ash'"
  ],
  [[...args, '--decimal', 'comma'], 2, '--decimal goes with --map'],
  [[...args, '--map', 'x'], 2, 'Write it as "Thickness=thickness mm".'],
  [['--lot', 'EB-2'], 2, "required option '--test <NAME>' not specified"]
] as const)('import %j is refused with exit code %i', async ([options, status, told]) => {
  const run = await imported(placeWith(), ...options)
  expect(run).toMatchObject({ status, changed: [] })
  expect(run.stderr).toContain(told)
})
