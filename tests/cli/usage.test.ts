import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { projectFolder, version } from '../../src/site/project.ts'
import { runInProcess } from '../in-process.ts'
import { plainEnvironment, program, run, workplace } from '../site/workplace.ts'

/** Called in place, `start` too: none of these comes to the point of serving anything. */
const lotfolio = (args: readonly string[], place: string, more: Record<string, string> = {}) =>
  runInProcess(args, place, { ...plainEnvironment(), ...more })

describe('wrong usage is one plain line and exit code 2:', () => {
  const rows: [args: string[], line: string][] = [
    [['chek'], "unknown command 'chek' (Did you mean check?)"],
    [['check', '--contents', 'x'], "unknown option '--contents' (Did you mean --content?)"],
    [['check', '--content'], "option '--content <DIR>' argument missing"],
    [['check', 'x'], "unexpected argument 'x': write lotfolio check --content x"],
    [
      ['check', '--format', 'xml'],
      "option '--format <FORMAT>' argument 'xml' is invalid. Allowed choices are text, json."
    ],
    [
      ['build', '--edition', 'all'],
      "option '--edition <EDITION>' argument 'all' is invalid. Allowed choices are public, workshop."
    ],
    [
      ['build', '--paper', 'A5'],
      "option '--paper <SIZE>' argument 'A5' is invalid. Allowed choices are A4, Letter."
    ],
    ...['2026-02-30', '2026-2-3', '14.3.2026', '+02026-01-01'].map((date): [string[], string] => [
      ['build', '--as-of', date],
      `option '--as-of <DATE>' argument '${date}' is invalid. Write a date of the calendar as 2026-03-14.`
    ]),
    [
      ['start', '--port', '70000'],
      "option '--port <NUMBER>' argument '70000' is invalid. Write a whole number up to 65535; 0 takes any free port."
    ]
  ]
  test.each(rows)('%j', async (args, line) => {
    expect(await lotfolio(args, workplace())).toMatchObject({
      status: 2,
      stdout: '',
      stderr: `lotfolio: ${line}\n`
    })
  })
})

describe('a folder that is not there is one plain line and exit code 1:', () => {
  test.each([[['check']], [['build']], [['start', '--port', '0']]])('%j', async args => {
    const place = workplace()
    expect(await lotfolio(args, place)).toMatchObject({
      status: 1,
      stdout: '',
      stderr: `lotfolio: ${join(place, 'content')}: does not exist\n`
    })
  })
})

describe('help', () => {
  test.each([
    [['--help']],
    [['check', '-h']],
    ...['build', 'start', 'issue', 'withdraw', 'keys', 'sign', 'verify', 'join'].map(name => [
      [name, '--help']
    ])
  ])('%j', async args => {
    const { status, stdout, stderr } = await lotfolio(args, workplace())
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toMatch(/^Usage: lotfolio/u)
    if (args.length > 1) expect(stdout).toMatch(/\nExamples:\n {2}lotfolio /u)
  })

  test('the version', async () => {
    expect((await lotfolio(['--version'], workplace())).stdout).toBe(`${version}\n`)
  })

  test('no command at all', async () => {
    const { status, stderr } = await lotfolio([], workplace())
    expect(status).toBe(2)
    expect(stderr).toMatch(/^Usage: lotfolio/u)
  })
})

describe('run by npm', () => {
  /** What npm sets for `npm run` in a project whose user stands in a folder of it. */
  const byNpm = (place: string, more: Record<string, string> = {}) => ({
    npm_command: 'run-script',
    npm_package_json: join(place, 'package.json'),
    INIT_CWD: join(place, 'sub'),
    ...more
  })

  const rows: [args: string[], kept: Record<string, string>, line: string][] = [
    [['check', 'X'], {}, "unexpected argument 'X': write npm run check -- --content X"],
    [
      ['check', 'X'],
      { npm_config_content: 'true' },
      "unexpected argument 'X': write npm run check -- --content X"
    ],
    [
      ['check'],
      { npm_config_content: 'X' },
      'npm kept the option --content for itself: write npm run check -- --content X'
    ],
    [
      ['build', 'workshop'],
      { npm_config_edition: 'true', npm_config_as_of: '2026-03-14' },
      "unexpected argument 'workshop': write npm run build -- --edition workshop --as-of 2026-03-14"
    ]
  ]
  test.each(rows)('%j with %j shows the missing --', async (args, kept, line) => {
    const place = workplace()
    expect(await lotfolio(args, place, byNpm(place, kept))).toMatchObject({
      status: 2,
      stderr: `lotfolio: ${line}\n`
    })
  })

  test('paths start where the user stands, defaults in the project', async () => {
    const place = workplace()
    mkdirSync(join(place, 'sub'))
    const typed = await lotfolio(['check', '--content', 'x'], place, byNpm(place))
    expect(typed.stderr).toBe(`lotfolio: ${join(place, 'sub', 'x')}: does not exist\n`)
    const fallback = await lotfolio(['check'], place, byNpm(place))
    expect(fallback.stderr).toBe(`lotfolio: ${join(place, 'content')}: does not exist\n`)
  })

  test("another project's npm changes nothing", async () => {
    const place = workplace()
    const { stderr } = await lotfolio(['check', '--content', 'x'], place, byNpm('/elsewhere'))
    expect(stderr).toBe(`lotfolio: ${join(place, 'x')}: does not exist\n`)
  })

  test('for real', async () => {
    const { status, stderr } = await run(
      ['npm', 'run', '--silent', 'check', '--content', 'X'],
      projectFolder
    )
    expect(stderr).toContain(
      "lotfolio: unexpected argument 'X': write npm run check -- --content X\n"
    )
    expect(status).toBe(2)
  })
})

test('npx finds the program in the checkout', async () => {
  const { status, stdout } = await run(
    ['npx', '--no-install', 'lotfolio', '--version'],
    projectFolder
  )
  expect({ status, stdout }).toEqual({ status: 0, stdout: `${version}\n` })
})

test('a reader that stops reading is no failure', async () => {
  const command = `"${process.execPath}" "${program}" build --help | true`
  expect((await run(['sh', '-c', command], workplace())).stderr).toBe('')
})
