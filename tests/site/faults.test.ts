import { spawnSync } from 'node:child_process'
import { chmodSync, cpSync, mkdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, onTestFinished, test, type TestContext } from 'vitest'
import { thorough } from '../thorough.ts'
import { builtSmallWorkplace } from './built-small.ts'
import { done, registerOf, workshopOf } from './issuing.ts'
import {
  smallWorkplace,
  differences,
  lotfolio,
  lotfolioProcess,
  namesIn,
  program,
  run,
  tree,
  workplace
} from './workplace.ts'

/** Nobody in particular: not root, who may write anywhere. */
const UNPRIVILEGED = '65534'

/** Leave a test out, so that nobody overlooks it. */
function leaveOut(context: TestContext, why: string): never {
  console.warn(`NOT RUN: ${context.task.name}: ${why}`)
  return context.skip(why)
}

const ids = [`--reuid=${UNPRIVILEGED}`, `--regid=${UNPRIVILEGED}`, '--clear-groups']
const drop = process.getuid?.() === 0 ? ['setpriv', ...ids] : []

/** Run lotfolio as someone without rights. */
const asNobody = (args: readonly string[], cwd: string) =>
  run([...drop, process.execPath, program, ...args], cwd, { HOME: '/' })

/** Whether such a one can at all, here; tried once. */
let canRun: Promise<boolean> | undefined

async function unprivileged(context: TestContext, args: readonly string[], cwd: string) {
  canRun ??= asNobody(['--version'], cwd).then(({ status }) => status === 0)
  if (!(await canRun)) leaveOut(context, 'no unprivileged user can run the program here')
  return asNobody(args, cwd)
}

test('a folder that may not be written to is one plain line', async context => {
  const place = await builtSmallWorkplace()
  const before = tree(place)
  chmodSync(place, 0o555)
  onTestFinished(() => chmodSync(place, 0o755))
  const { status, stderr } = await unprivileged(context, ['build'], place)
  expect(stderr).toMatch(/^lotfolio: .*_site\.lotfolio-new-\d+: permission denied\n$/u)
  expect(status).toBe(1)
  expect(differences(tree(place), before)).toEqual([])
})

test('a record that may not be read is one plain line', async context => {
  const place = smallWorkplace()
  chmodSync(place, 0o755)
  const secret = join(place, 'content', 'producer.yaml')
  chmodSync(secret, 0o000)
  const { status, stderr } = await unprivileged(context, ['check'], place)
  expect(stderr).toBe(`lotfolio: ${secret}: permission denied\n`)
  expect(status).toBe(1)
})

test('a full disk is one plain line, and the old site stays', async context => {
  const place = await builtSmallWorkplace()
  const disk = mounted(context, 8)
  cpSync(place, disk, { recursive: true })
  const before = tree(join(disk, '_site'))
  for (const room_KiB of [0, 40, 400]) {
    fill(disk, room_KiB)
    const build = aloneAt(40, room_KiB)
    const { status, stderr } = await build(['build', '--paper', 'Letter'], disk)
    expect(stderr).toMatch(/^lotfolio: .*the disk is full\n$/u)
    expect(status).toBe(1)
    expect(differences(tree(join(disk, '_site')), before)).toEqual([])
    expect(namesIn(disk).filter(name => name.includes('.lotfolio-'))).toEqual([])
  }
  rmSync(join(disk, 'filler'))
  expect((await lotfolio(['build'], disk)).status).toBe(0)
  expect(differences(tree(join(disk, '_site')), before)).toEqual([])
})

test('a full disk leaves the register as it was', async context => {
  const place = workshopOf('EB-2')
  const disk = mounted(context, 4)
  cpSync(join(place, 'content'), join(disk, 'content'), { recursive: true })
  const day = ['--date', '2026-03-01']
  await done(disk, 'issue', 'EB-1', ...day)
  const before = registerOf(disk)
  for (const room_KiB of [0, 8, 24]) {
    fill(disk, room_KiB)
    const issue = aloneAt(8, room_KiB)
    const { status, stderr } = await issue(['issue', 'EB-2', ...day], disk)
    expect(stderr).toMatch(/^lotfolio: .*the disk is full\n$/u)
    expect(status).toBe(1)
    expect(registerOf(disk)).toEqual(before)
    expect((await lotfolio(['check'], disk)).status).toBe(0)
  }
  rmSync(join(disk, 'filler'))
  await done(disk, 'issue', 'EB-2', ...day)
  expect(Object.keys(registerOf(disk))).toEqual(['CT-1-r1.json', 'CT-2-r1.json', 'log.jsonl'])
})

test('a register that may not be written to is one plain line', async context => {
  const place = workshopOf()
  await done(place, 'keys')
  chmodSync(place, 0o755)
  const { status, stderr } = await unprivileged(context, ['issue', 'EB-1'], place)
  expect(stderr).toMatch(/^lotfolio: .*: permission denied\n$/u)
  expect(status).toBe(1)
  expect(registerOf(place)).toEqual({})
})

/** A disk of its own, of so many MB, gone when the test ends. */
function mounted(context: TestContext, size_MB: number): string {
  const disk = join(workplace(), 'disk')
  mkdirSync(disk)
  const { status } = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${size_MB}m`, 'tmpfs', disk])
  if (status !== 0) leaveOut(context, 'no small disk can be mounted here')
  onTestFinished(() => void spawnSync('umount', [disk]))
  return disk
}

/**
 * How to run the program where a disk has so much room left: as a process of its own at one of them, as
 * what is not looked after would end it; of all the others a process tells nothing more.
 */
const aloneAt = (alone_KiB: number, room_KiB: number) =>
  thorough || room_KiB === alone_KiB ? lotfolioProcess : lotfolio

/** Leave so much room on a disk. */
function fill(disk: string, room_KiB: number): void {
  rmSync(join(disk, 'filler'), { force: true })
  const { bavail, bsize } = statfsSync(disk)
  writeFileSync(join(disk, 'filler'), Buffer.alloc(bavail * bsize - room_KiB * 1024))
}
