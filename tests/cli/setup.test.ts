import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { requireTool } from '../tools.ts'
import { lotfolio, namesIn, plainEnvironment, program, tree, workplace } from '../site/workplace.ts'

const answers = [
  ['--name', 'Hillside Flake'],
  ['--address', '1 Yard Lane; Hillside'],
  ['--email', 'papers@hillside.example.org'],
  ['--telephone', '555 0100'],
  ['--person', 'Ada Quillfeather']
].flat()

const setUp = (place: string, ...more: string[]) =>
  lotfolio(['setup', 'my workshop', ...answers, ...more], place)

test('a workshop set up by options builds in both editions, warned of what is to be written', async () => {
  const place = workplace()
  const { status, stdout, stderr } = await setUp(place)
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
  expect(stdout).toContain('\n  lotfolio check --content "my workshop"\n')
  for (const edition of ['public', 'workshop']) {
    const args = ['build', '--content', 'my workshop', '--edition', edition, '--out', edition]
    const built = await lotfolio(args, place)
    expect(built.status).toBe(0)
    expect(built.stderr.match(/^my workshop\S+ [A-Z_]+/gmu)).toEqual([
      'my workshop/grades/flake-1-r1.yaml:9:14 PLACEHOLDER',
      'my workshop/methods/TM-01-e1.yaml:9:13 PLACEHOLDER'
    ])
    expect(built.stdout).toMatch(/^7 files read: no errors, 2 warnings\nWrote no lots/u)
    const page = readFileSync(join(place, edition, 'index.html'), 'utf8')
    expect(page).toContain('Hillside Flake')
    expect(page).not.toContain('Quillfeather')
  }
})

test('a folder with anything in it, or a file, is left alone', async () => {
  const place = workplace()
  mkdirSync(join(place, 'my workshop'))
  writeFileSync(join(place, 'my workshop', 'producer.yaml'), 'mine\n')
  const before = tree(place)
  const full = await setUp(place)
  expect(full.status).toBe(1)
  expect(full.stderr).toBe('lotfolio: my workshop is not empty: name a new folder\n')
  for (const dir of ['my workshop/producer.yaml', 'my workshop/producer.yaml/below']) {
    const { status, stderr } = await lotfolio(['setup', dir, ...answers], place)
    expect({ status, stderr }).toEqual({
      status: 1,
      stderr: `lotfolio: ${dir} is a file: name a new folder\n`
    })
  }
  expect(tree(place)).toEqual(before)
})

test('an empty folder is taken', async () => {
  const place = workplace()
  mkdirSync(join(place, 'my workshop'))
  expect((await setUp(place)).status).toBe(0)
})

test('a Git repository is made when asked for, and not otherwise', async () => {
  const place = workplace()
  await setUp(place, '--git')
  expect(existsSync(join(place, 'my workshop', '.git', 'HEAD'))).toBe(true)
  await lotfolio(['setup', 'plain', ...answers], place)
  expect(namesIn(join(place, 'plain'))).toEqual([
    'batches',
    'grades',
    'instruments',
    'materials',
    'methods',
    'producer.yaml',
    'schemas'
  ])
})

test('without Git the records are there all the same', async () => {
  const place = workplace()
  const args = ['setup', 'my workshop', ...answers, '--git']
  const { status, stderr } = await lotfolio(args, place, { PATH: place })
  expect(status).toBe(1)
  expect(stderr).toContain('git could not make the repository; the records are there')
  expect(existsSync(join(place, 'my workshop', 'producer.yaml'))).toBe(true)
})

test.for([
  [[], /missing required argument 'dir'/u],
  [['w'], /without a terminal to ask on, give --name, --address, --email, --telephone, --person/u],
  [['w', ...answers, '--name', ' '], /--name says nothing/u],
  [['w', ...answers, '--address', ' ; '], /--address says nothing/u],
  [['w', ...answers, '--date', '14.3.2026'], /Write a date of the calendar/u],
  [['w', ...answers, '--paper', 'A5'], /Allowed choices are A4, Letter/u],
  [['w', 'x', ...answers], /unexpected argument 'x'/u]
] as const)('%j is refused with exit code 2 and nothing written', async ([args, expected]) => {
  const place = workplace()
  const { status, stdout, stderr } = await lotfolio(['setup', ...args], place)
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' })
  expect(stderr).toMatch(expected)
  expect(namesIn(place)).toEqual([])
})

test('the calls shown are those of the way it was called', async () => {
  const place = workplace()
  const npm = { npm_package_json: join(place, 'package.json'), INIT_CWD: place }
  const byNpm = await lotfolio(['setup', 'a', ...answers], place, npm)
  expect(byNpm.stdout).toContain('\n  npm run check -- --content a\n')
  const byNpx = await lotfolio(['setup', 'b', ...answers], place, { ...npm, npm_command: 'exec' })
  expect(byNpx.stdout).toContain('\n  npx --no-install lotfolio check --content b\n')
})

/** Fenced blocks of the README's walk through a first lot, in their order. */
function readmeBlocks(): string[] {
  const readme = readFileSync('README.md', 'utf8')
  const section = /## Your first lot.*?(?=\n## )/su.exec(readme)?.[0] ?? ''
  return [...section.matchAll(/^ {3}```\w*\n(.*?)^ {3}```$/gmsu)].map(([, block]) =>
    block!.replace(/^ {3}/gmu, '')
  )
}

test('the first lot of the README comes out as it says there', async () => {
  const place = workplace()
  const inWorkshop = (path: string) => join(place, 'my-workshop', path)
  const [setup, batch, method, check, mistake, status, issue, build] = readmeBlocks()
  const call = (line: string) => {
    const [, name, rest] = /^npm run (\w+) -- (.*)\n$/u.exec(line)!
    return lotfolio([name!, ...rest!.replaceAll('../', '').split(' ')], place)
  }
  const setupLine = setup!.replace('npm run setup -- ', '').replaceAll('../', '').trim()
  expect(await lotfolio(['setup', ...setupLine.split(' '), ...answers], place)).toMatchObject({
    status: 0
  })

  const draft = readFileSync(inWorkshop('batches/EB-1.yaml'), 'utf8')
  const comments = draft.match(/^#.*\n/gmu)!.join('')
  const fieldsIn = (text: string) => text.match(/[a-z-]+(?=:)/gu)
  expect(fieldsIn(batch!)).toEqual(fieldsIn(draft.replace(/^(?:#.*|draft: yes)\n/gmu, '')))
  writeFileSync(inWorkshop('batches/EB-1.yaml'), comments + batch!.replace('0.502', '0,502'))
  expect((await call(check!)).stdout).toContain(mistake!.replaceAll('../', ''))

  writeFileSync(inWorkshop('batches/EB-1.yaml'), comments + batch! + status!)
  const refused = await call(issue!)
  expect(refused).toMatchObject({ status: 1, stdout: 'Nothing issued\n' })
  expect(refused.stderr).toContain('my-workshop/methods/TM-01-e1.yaml:9:13 NOT_CERTIFIABLE\n')

  writeFileSync(inWorkshop('methods/TM-01-e1.yaml'), method!)
  const issued = await call(issue!)
  expect(issued).toMatchObject({ status: 0 })
  expect(issued.stdout).toMatch(/^Issued C-1, revision 1, on EB-1\n/u)
  expect(issued.stdout).toContain('The paper: archive/C-1-r1.pdf;')
  expect(namesIn(inWorkshop('certificates'))).toEqual(['C-1-r1.yaml'])
  expect(namesIn(inWorkshop('register'))).toEqual(['C-1-r1.json', 'log.jsonl'])
  const checked = await call(check!)
  expect(checked.stdout).toMatch(/8 files read: no errors, 3 warnings(, 1 draft)?\n$/u)
  expect(checked.stdout.match(/PLACEHOLDER/gu)).toHaveLength(1)
  expect(checked.stdout.match(/NO_CALIBRATION/gu)).toHaveLength(2)

  expect(await call(build!)).toMatchObject({ status: 0 })
  expect(namesIn(join(place, 'my-site', 'lots', 'EB-1'))).toEqual([
    'EB-1-working.pdf',
    'data.json',
    'index.html'
  ])
  const papers = join(place, 'my-site', 'certificates', 'C-1')
  expect(namesIn(papers)).toEqual(['C-1-r1.json', 'C-1-r1.pdf', 'C-1-r1.proof.json', 'index.html'])
  expect(tree(papers)['C-1-r1.pdf']).toBe(tree(join(place, 'archive'))['C-1-r1.pdf'])
})

const terminal = requireTool('script', 'bsdutils') && process.platform === 'linux'

/** Run setup on a terminal, giving each answer when a question ends in ': '. */
async function onTerminal(place: string, given: readonly string[]) {
  const line = `'${process.execPath}' '${program}' setup w`
  const child = spawn('script', ['-qec', line, '/dev/null'], {
    cwd: place,
    env: { ...plainEnvironment(), TERM: 'dumb' }
  })
  let said = ''
  const left = [...given]
  child.stdout.on('data', (part: Buffer) => {
    said += part.toString()
    const answer = /: (?:\u001B\[\d*G)?$/u.test(said) ? left.shift() : undefined
    if (answer !== undefined) child.stdin.write(answer)
  })
  const [status] = (await once(child, 'close')) as [number | null]
  return { status, said }
}

test.skipIf(!terminal)('asks on a terminal, again where the answer is blank', async () => {
  const place = workplace()
  const given = [
    '\r',
    'Hillside\r',
    ' ; \r',
    '1 Lane; Town\r',
    'a@example.org\r',
    '555 0100\r',
    'A\r'
  ]
  const { status, said } = await onTerminal(place, given)
  expect(status, said).toBe(0)
  const producer = readFileSync(join(place, 'w', 'producer.yaml'), 'utf8')
  expect(producer).toContain('name: Hillside\naddress:\n  - 1 Lane\n  - Town\n')
})

test.skipIf(!terminal).for([
  ['Ctrl-C', '\u0003'],
  ['Ctrl-D', '\u0004']
] as const)('%s leaves nothing behind, and no stack', async ([, key]) => {
  const place = workplace()
  const { status, said } = await onTerminal(place, ['Hillside\r', key])
  expect(status).toBe(1)
  expect(said).toContain('lotfolio: stopped: nothing is written')
  expect(said).not.toContain('    at ')
  expect(namesIn(place)).toEqual([])
})
