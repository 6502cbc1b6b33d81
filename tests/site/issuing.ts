/** Small workshops whose certificates are issued, for tests of the register's commands. */

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { lotfolio, namesIn, smallWorkplace } from './workplace.ts'

/** Lots beside EB-1 that are let go and have no certificate yet. */
export function workshopOf(...lots: readonly string[]): string {
  const place = smallWorkplace()
  for (const name of ['GR-1.yaml', 'SA-1.yaml']) {
    const material = join(place, 'content', 'materials', name)
    writeFileSync(material, readFileSync(material, 'utf8').replace(/\d+ g/u, '90000 g'))
  }
  const batches = join(place, 'content', 'batches')
  const text = readFileSync(join(batches, 'EB-1.yaml'), 'utf8')
  for (const [index, lot] of lots.entries())
    // Other masses, or the readings would be told as copied.
    writeFileSync(
      join(batches, `${lot}.yaml`),
      text
        .replace('lot: EB-1', `lot: ${lot}`)
        .replaceAll(
          /(0\.\d{3}) g, volume: (\d+) mL/gu,
          (_, mass: string, volume: string) =>
            `${mass} g, volume: ${Number(volume) + 1 + (index % 9)} mL`
        )
        .replaceAll(
          /(10\.0\d\d) g, titre: 1\.3(\d)/gu,
          (_, mass: string, digit: string) => `${mass} g, titre: 1.3${digit}${(index % 9) + 1}`
        )
    )
  return place
}

/** Where the private keys of a place lie: beside it, as it may not hold them. */
export const keysOf = (place: string): string => `${place}-keys`

/** Run a command that must do; what it says. */
export async function done(place: string, ...args: string[]): Promise<string> {
  const environment = { LOTFOLIO_KEYS: keysOf(place) }
  const { status, stdout, stderr } = await lotfolio(args, place, environment)
  expect({ status, stderr }, args.join(' ')).toEqual({ status: 0, stderr: '' })
  return stdout
}

/** Run a command that must refuse; its last line. */
export async function refused(place: string, ...args: string[]): Promise<string> {
  const before = registerOf(place)
  const run = await lotfolio(args, place, { LOTFOLIO_KEYS: keysOf(place) })
  expect(run.status, run.stdout).toBe(1)
  expect(registerOf(place)).toEqual(before)
  return run.stderr.trimEnd().split('\n').at(-1)! || run.stdout.trimEnd().split('\n').at(-1)!
}

const folderOf = (place: string) => join(place, 'content', 'register')

/** Files of the register by name, with their text. */
export function registerOf(place: string): Record<string, string> {
  const folder = folderOf(place)
  if (!existsSync(folder)) return {}
  return Object.fromEntries(
    namesIn(folder)
      .filter(name => name !== 'copies')
      .map(name => [name, readFileSync(join(folder, name), 'utf8')])
  )
}

interface Line {
  readonly event: { readonly is: string; readonly number?: string; readonly lot?: string }
}

/** Events of a place's log. */
export const eventsOf = (place: string): Line['event'][] =>
  (registerOf(place)['log.jsonl'] ?? '')
    .split('\n')
    .filter(line => line !== '')
    .map(line => (JSON.parse(line) as Line).event)

/** Put a file into a place's register. */
export function putInRegister(place: string, name: string, text: string | Uint8Array): void {
  mkdirSync(folderOf(place), { recursive: true })
  writeFileSync(join(folderOf(place), name), text)
}

const packing =
  'packing: { packages: 1, gross: 90 g, store-below: 40 °C, keep-dry: yes, origin: Marlshire, tariff-code: 3801.90, emergency-telephone: +1 555 0177 }\n'
const contents = [
  'contents:',
  '  - lot: EB-1',
  '    mass: 10.00 g',
  '    customer-part: BS-77',
  '    containers:',
  '      - { number: C-1, kind: jar, tare: 31.2 g, net: 6.00 g, gross: 37.3 g }',
  '      - { number: C-2, kind: jar, tare: 31.2 g, net: 4.00 g }',
  '    limits: { expansion-volume: { min: 250 mL/g } }',
  ''
].join('\n')
const head = 'number: SH-1\nsent: 2026-03-02\ncustomer: Brask Seals\norder: PO 1\n'

/** A shipment of EB-1 in two jars, with a limit of the customer. */
export const shipment = { head, contents, packing, whole: head + contents + packing }

/** Put a shipment's record among the records of a place. */
export function putShipment(place: string, text = shipment.whole): void {
  const folder = join(place, 'content', 'shipments')
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'SH-1.yaml'), text)
}
