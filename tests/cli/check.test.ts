import { appendFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { builtSmallWorkplace } from '../site/built-small.ts'
import { done } from '../site/issuing.ts'
import { demoWorkplace, differences, lotfolio, smallWorkplace, tree } from '../site/workplace.ts'

const producer = join('content', 'producer.yaml')

describe('check', () => {
  test('says that nothing is wrong, and writes nothing', async () => {
    const place = demoWorkplace()
    const before = tree(place)
    const { status, stdout, stderr } = await lotfolio(['check'], place)
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toMatch(/^\d+ files read: no errors, \w+ warnings?, 1 draft\n$/mu)
    expect(tree(place)).toEqual(before)
  })

  test('reports every problem of every file in one run, by place', async () => {
    const place = smallWorkplace()
    appendFileSync(join(place, producer), 'wrong: 1\nalso-wrong: 2\n')
    const grade = join(place, 'content', 'grades', 'broken.yaml')
    writeFileSync(grade, 'nothing: [\n')
    const { status, stdout, stderr } = await lotfolio(['check'], place)
    expect({ status, stderr }).toEqual({ status: 1, stderr: '' })
    expect(stdout).toMatch(/^content\/grades\/broken\.yaml:\d+:\d+ YAML_SYNTAX$/mu)
    expect(stdout.match(/^content\/producer\.yaml:\d+:1 UNKNOWN_FIELD$/gmu)).toHaveLength(2)
    expect(stdout).toMatch(/\n\d+ files read: \d+ errors, \w+ warnings?\n$/u)
  })

  test('counts columns without the byte order mark', async () => {
    const place = smallWorkplace()
    const path = join(place, producer)
    writeFileSync(path, `\uFEFFwrong: 1\r\n${readFileSync(path, 'utf8').replaceAll('\n', '\r\n')}`)
    const { stdout } = await lotfolio(['check'], place)
    expect(stdout).toMatch(/^content\/producer\.yaml:1:1 UNKNOWN_FIELD$/mu)
    expect(stdout).toContain('\n  1 | wrong: 1\n    | ^^^^^\n')
  })

  test('reports to programs in JSON', async () => {
    const place = smallWorkplace()
    appendFileSync(join(place, producer), 'wrong: 1\n')
    const { status, stdout } = await lotfolio(['check', '--format', 'json'], place)
    const report = JSON.parse(stdout) as { errors: number; problems: unknown[] }
    expect(status).toBe(1)
    expect(report.errors).toBe(1)
    expect(report.problems).toContainEqual(
      expect.objectContaining({
        severity: 'error',
        code: 'UNKNOWN_FIELD',
        file: 'content/producer.yaml',
        field: 'wrong',
        column: 1
      })
    )
  })
})

describe('build', () => {
  test('with errors keeps the old site byte for byte', async () => {
    const place = await builtSmallWorkplace()
    expect((await lotfolio(['build'], place)).stdout).toMatch(
      /^\d+ files read: .*\nWrote \d+ lots to _site, public edition as of \d{4}-\d\d-\d\d\n$/u
    )
    const before = tree(join(place, '_site'))
    appendFileSync(join(place, producer), 'wrong: 1\n')
    const { status, stdout, stderr } = await lotfolio(['build'], place)
    expect(status).toBe(1)
    expect(stderr).toMatch(/^content\/producer\.yaml:\d+:1 UNKNOWN_FIELD$/mu)
    expect(stdout).toMatch(/ 1 error, .*\nNothing written\n$/u)
    expect(tree(join(place, '_site'))).toEqual(before)
  })

  test('writes the workshop edition to private', async () => {
    const place = await builtSmallWorkplace()
    rmSync(join(place, '_site'), { recursive: true })
    const { status, stdout } = await lotfolio(['build', '--edition', 'workshop'], place)
    expect(status).toBe(0)
    expect(stdout).toMatch(/ lots to private, workshop edition as of /u)
    const written = Object.keys(tree(place)).filter(path => !/^(?:content|\.cache)\//u.test(path))
    expect(written).toContain('private/index.html')
    expect(written.filter(path => !path.startsWith('private/'))).toEqual([])
  })

  test('judges as of the day and prints on the paper it is told', async () => {
    const place = await builtSmallWorkplace()
    await done(place, 'issue', 'EB-1', '--date', '2026-03-01')
    await lotfolio(['build'], place)
    const first = tree(join(place, '_site'))
    expect(Object.keys(first)).toContain('certificates/CT-1/CT-1-r1.pdf')
    const args = ['build', '--as-of', '2027-01-31', '--paper', 'Letter']
    const { stdout, stderr } = await lotfolio(args, place)
    expect(stderr).toBe('')
    expect(stdout).toMatch(/ as of 2027-01-31\n$/u)
    const changed = differences(first, tree(join(place, '_site'))).filter(path =>
      path.endsWith('.pdf')
    )
    // What was issued stays as it was; all else comes out on the paper asked for.
    const kinds = changed.map(path => /-(preview|working|datasheet)\.pdf$/u.exec(path)?.[1] ?? path)
    expect([...new Set(kinds)].sort()).toEqual(['datasheet', 'preview', 'working'])
    for (const path of changed)
      expect(readFileSync(join(place, '_site', path), 'latin1'), path).toContain('[0 0 612 792]')
  })
})
