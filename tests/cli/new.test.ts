import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { demoWorkplace, differences, lotfolio, tree, workplace } from '../site/workplace.ts'

const textIn = (place: string, ...path: string[]) =>
  readFileSync(join(place, 'content', ...path), 'utf8')

/** Run `lotfolio new` and tell what it wrote. */
async function started(place: string, ...args: string[]) {
  const before = tree(place)
  const run = await lotfolio(['new', ...args], place)
  return { ...run, written: differences(before, tree(place)) }
}

/** A report but for how many files and drafts there are: the demo has signals of its own. */
const withoutCounts = (report: string) =>
  report.replace(/^\d+ files read/mu, 'files read').replace(/\d+ drafts?$/mu, 'drafts')

describe('new', () => {
  test.for(['batch', 'expansion', 'foil'] as const)(
    'writes a %s that check accepts as a draft, and says so',
    async kind => {
      const place = demoWorkplace()
      const { stdout: before } = await lotfolio(['check'], place)
      const { status, stdout, stderr, written } = await started(place, kind)
      expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
      expect(written).toHaveLength(1)
      expect(stdout).toContain(`Wrote ${written[0]}, from `)
      expect(stdout).toContain("'draft: yes'")
      const { stdout: report } = await lotfolio(['check'], place)
      expect(report).toMatch(/\d+ files read: no errors, /u)
      expect(withoutCounts(report)).toBe(withoutCounts(before))
    }
  )

  test.for(['material', 'instrument', 'shipment'] as const)(
    'leaves a %s that check calls unfinished, and nothing else',
    async kind => {
      const place = demoWorkplace()
      const { written } = await started(place, kind)
      const { stdout } = await lotfolio(['check', '--format', 'json'], place)
      const { problems } = JSON.parse(stdout) as { problems: { code: string; file: string }[] }
      expect(problems.length).toBeGreaterThan(0)
      for (const { code, file } of problems)
        expect({ code, file }).toEqual({ code: 'MISSING_FIELD', file: written[0] })
    }
  )

  test('never writes over a record, whatever its file is called', async () => {
    const place = demoWorkplace()
    writeFileSync(join(place, 'content', 'batches', 'odd name.yaml'), 'lot: EB-99\nmade: ""\n')
    for (const number of ['EB-26-001', 'EB-99']) {
      const { status, stderr, written } = await started(place, 'batch', '--number', number)
      expect({ status, written }).toEqual({ status: 1, written: [] })
      expect(stderr).toBe(`lotfolio: batch ${number} is already there: give another --number\n`)
    }
    writeFileSync(join(place, 'content', 'batches', 'EB-77.yaml'), 'lot: EB-78\nmade: ""\n')
    const { status, stderr, written } = await started(place, 'batch', '--number', 'EB-77')
    expect({ status, written }).toEqual({ status: 1, written: [] })
    expect(stderr).toMatch(/EB-77\.yaml: is already there\n$/u)
  })

  test.for([
    [['batch', '--number', '../../evil'], /'--number <NUMBER>' .* A number must be 1 to 40/u],
    [['batch', '--date', '2026-02-30'], /'--date <DATE>' .* Write a date/u],
    [['wire'], /Allowed choices are batch, expansion/u],
    [[], /missing required argument 'kind'/u],
    [['batch', 'extra'], /unexpected argument 'extra'/u],
    [['batch', '--colour', 'red'], /unknown option '--colour'/u]
  ] as const)('refuses %j with exit code 2', async ([args, expected]) => {
    const place = demoWorkplace()
    const { status, stdout, stderr, written } = await started(place, ...args)
    expect({ status, stdout, written }).toEqual({ status: 2, stdout: '', written: [] })
    expect(stderr).toMatch(expected)
    expect(stderr.trimEnd()).not.toContain('\n')
  })

  test('starts from the last record that is no draft', async () => {
    const place = demoWorkplace()
    expect(textIn(place, 'batches', 'EB-26-014.yaml')).toContain('draft: yes')
    const { stdout } = await started(place, 'batch')
    expect(stdout).toContain('content/batches/EB-26-016.yaml, from EB-26-015 ')
    expect(textIn(place, 'batches', 'EB-26-016.yaml')).toContain('expansion-volume:')
  })

  test('numbers a record after those of the pattern it starts from', async () => {
    const place = demoWorkplace()
    const { written } = await started(place, 'material', '--like', 'GR-26-02')
    expect(written).toEqual(['content/materials/GR-26-04.yaml'])
    const number = ['--number', 'OX-26-09']
    expect((await started(place, 'material', ...number)).stdout).toContain(', from OX-26-03 ')
    expect((await started(place, 'instrument', '--like', 'BAL-1')).written).toEqual([
      'content/instruments/BAL-3.yaml'
    ])
  })

  test('says which record there is not to start from', async () => {
    const { status, stderr } = await started(demoWorkplace(), 'batch', '--like', 'EB-26-099')
    expect({ status, stderr }).toEqual({
      status: 1,
      stderr: 'lotfolio: there is no batch EB-26-099 to start from\n'
    })
  })
})

describe('a new grade', () => {
  test('is the next revision of the one it starts from', async () => {
    const place = demoWorkplace()
    const args = ['grade', '--like', 'flake-250', '--date', '2026-12-01']
    const { written } = await started(place, ...args)
    expect(written).toEqual(['content/grades/flake-250-r4.yaml'])
    expect(textIn(place, 'grades', 'flake-250-r4.yaml')).toBe(
      textIn(place, 'grades', 'flake-250-r3.yaml')
        .replace('revision: 3', 'revision: 4')
        .replace('2026-10-01', '2026-12-01')
    )
  })

  test('has a first revision under a new number, and passes check', async () => {
    const place = demoWorkplace()
    const args = ['grade', '--like', 'flake-250', '--number', 'flake-300']
    const { written } = await started(place, ...args)
    expect(written).toEqual(['content/grades/flake-300-r1.yaml'])
    expect((await lotfolio(['check'], place)).stdout).toContain('read: no errors')
  })
})

test('a new instrument claims no calibration that nobody has made', async () => {
  const place = demoWorkplace()
  await started(place, 'instrument', '--like', 'BAL-1')
  const text = textIn(place, 'instruments', 'BAL-3.yaml')
  for (const field of ['certificate', 'on', 'due', 'expanded-uncertainty'])
    expect(text).toMatch(new RegExp(`^ {2}${field}:$`, 'mu'))
})

test('run by npm, paths start where the user stands, spaces and all', async () => {
  const place = demoWorkplace()
  const project = join(place, 'project')
  const environment = { npm_command: 'run-script', npm_package_json: join(place, 'package.json') }
  const run = await lotfolio(['new', 'batch', '--content', '../content'], place, {
    ...environment,
    INIT_CWD: project
  })
  expect(run).toMatchObject({ status: 0, stderr: '' })
  expect(run.stdout).toContain('Wrote ../content/batches/EB-26-016.yaml')
})

describe('a new certificate', () => {
  test('has the next number of the workshop, and the lot it is asked for', async () => {
    const place = demoWorkplace()
    const args = ['certificate', '--lot', 'EB-26-001', '--date', '2026-12-01']
    const { written, stdout } = await started(place, ...args)
    expect(written).toEqual(['content/certificates/CT-26-023-r1.yaml'])
    expect(stdout).toContain('from CT-26-022 (another: --like NUMBER)')
    expect(textIn(place, 'certificates', 'CT-26-023-r1.yaml')).toBe(
      [
        '# yaml-language-server: $schema=../../schemas/certificate.json',
        'number: CT-26-023',
        'revision: 1',
        'lot: EB-26-001',
        'issued: 2026-12-01',
        'signatory: quality manager',
        'type:',
        'shipment:',
        ''
      ].join('\n')
    )
    expect((await lotfolio(['check'], place)).stdout).toContain('read: no errors')
  })

  test('leaves the lot blank where none is named, and carries no reason over', async () => {
    const place = demoWorkplace()
    await started(place, 'certificate', '--like', 'CT-26-007')
    const text = textIn(place, 'certificates', 'CT-26-023-r1.yaml')
    expect(text).toMatch(/^lot:$/mu)
    expect(text).not.toContain('reason')
  })

  test('of a number that is there is its next revision, on its lot, and wants a reason', async () => {
    const place = demoWorkplace()
    for (const [number, revision] of [
      ['CT-26-007', 3],
      ['CT-26-008', 2]
    ] as const) {
      const { written, stdout } = await started(place, 'certificate', '--number', number)
      expect(written).toEqual([`content/certificates/${number}-r${revision}.yaml`])
      expect(stdout).toContain('Fill in the reason')
      const text = textIn(place, 'certificates', `${number}-r${revision}.yaml`)
      expect(text).toMatch(/^lot: EB-26-00[67]$/mu)
      expect(text).toMatch(/^reason:$/mu)
    }
  })
})

test('a new titrant keeps what it is, and nothing of the other one’s standardisation', async () => {
  const place = demoWorkplace()
  const { written } = await started(place, 'titrant', '--date', '2026-12-01')
  expect(written).toEqual(['content/titrants/NA-26-05.yaml'])
  const text = textIn(place, 'titrants', 'NA-26-05.yaml')
  expect(text).toContain('standardised: 2026-12-01')
  expect(text).toMatch(/^title: \S/mu)
  for (const field of ['concentration', 'expanded-uncertainty', 'expires'])
    expect(text).toMatch(new RegExp(`^${field}:$`, 'mu'))
})

test('a new method is the next edition of the one it starts from, and passes check', async () => {
  const place = demoWorkplace()
  const { written } = await started(place, 'method', '--like', 'TM-02', '--date', '2026-12-01')
  expect(written).toEqual(['content/methods/TM-02-e3.yaml'])
  expect(textIn(place, 'methods', 'TM-02-e3.yaml')).toBe(
    textIn(place, 'methods', 'TM-02-e2.yaml')
      .replace('edition: 2', 'edition: 3')
      .replace('valid-from: 2026-06-01', 'valid-from: 2026-12-01')
  )
  expect((await lotfolio(['check'], place)).stdout).toContain('read: no errors')
})

test('the first record of a kind is begun blank', async () => {
  const place = workplace()
  writeFileSync(join(place, 'producer.yaml'), 'name: X\n')
  for (const [kind, file] of [
    ['certificate', 'certificates/C-1-r1.yaml'],
    ['foil', 'foils/FL-1.yaml']
  ] as const) {
    const { status, stdout } = await lotfolio(['new', kind, '--content', '.'], place)
    expect({ status, stdout: stdout.split('\n')[0] }).toEqual({
      status: 0,
      stdout: `Wrote ${file}`
    })
  }
  const text = readFileSync(join(place, 'certificates', 'C-1-r1.yaml'), 'utf8')
  expect(text).toMatch(/number: C-1\nrevision: 1\nlot:\nissued: \d{4}-\d\d-\d\d\nsignatory:\n$/u)
  const foil = readFileSync(join(place, 'foils', 'FL-1.yaml'), 'utf8')
  expect(foil).toMatch(/lot: FL-1\nmade: \d{4}-\d\d-\d\d\ndraft: yes\ngrade:\nfrom:\n/u)
})

test('--lot is refused for anything but a certificate', async () => {
  const { status, stderr } = await started(demoWorkplace(), 'batch', '--lot', 'EB-26-001')
  expect({ status, stderr }).toEqual({
    status: 2,
    stderr: expect.stringContaining('--lot is for certificates alone') as string
  })
})
