/** Every code of the register is given by a test beside this one, and stands in the guide. */

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { problemCodes } from '../../src/problem.ts'
import { root } from '../root.ts'

const codes = Object.keys(problemCodes).filter(code => code.startsWith('REGISTER_'))
const tests = readdirSync(join(root, 'tests/register'))
  .filter(name => name !== 'codes.test.ts')
  .map(name => readFileSync(join(root, 'tests/register', name), 'utf8'))
const guide = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8')

test('there are codes of the register', () => {
  expect(codes.length).toBeGreaterThanOrEqual(27)
})

test.for(codes)('%s', code => {
  const given = new RegExp(`(?:[\\d}] |')${code}\\b`, 'u')
  expect(tests.some(text => given.test(text))).toBe(true)
  expect(guide).toMatch(new RegExp(`^\\| ${code} \\|`, 'mu'))
})
