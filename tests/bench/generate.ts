/** A large invented workshop for the benchmarks: the demo's records, again under new numbers. */

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { SourceFile } from '../../src/problem.ts'

const read = (path: string): SourceFile => ({
  path: join('content', path).replaceAll('\\', '/'),
  text: readFileSync(join('content', path), 'utf8')
})

/** Records every lot shares. */
const sharedFolders = ['instruments', 'titrants', 'methods', 'grades', 'materials']

/** Lots that stand for the rest: complete, released, with a certificate. */
const patterns = [
  { folder: 'batches', lot: 'EB-26-001', certificate: 'CT-26-001-r1' },
  { folder: 'batches', lot: 'EB-26-010', certificate: 'CT-26-015-r1' },
  { folder: 'batches', lot: 'EB-26-011', certificate: 'CT-26-017-r1' }
]

/** Files of a workshop with `lots` lots; the same files for the same number. */
export function generateWorkshop(lots: number): SourceFile[] {
  const shared = [
    read('producer.yaml'),
    ...sharedFolders.flatMap(folder =>
      readdirSync(join('content', folder)).map(name => plentiful(read(join(folder, name))))
    )
  ]
  return [...shared, ...Array.from({ length: lots }, (_, index) => lotFiles(index)).flat()]
}

/** The same workshop with its pages in German as well. */
export const inGermanToo = (files: readonly SourceFile[]): SourceFile[] => [
  ...files.map(file =>
    file.path === 'content/producer.yaml'
      ? { ...file, text: `${file.text}site-languages: [en, de]\n` }
      : file
  ),
  read(join('translations', 'de.yaml'))
]

/** In each container of a material, or all there is of one that is not kept by the container. */
const PLENTY_kg = 450_000

/** Materials enough for any number of lots; what was counted in the demo's containers says less. */
function plentiful(file: SourceFile): SourceFile {
  if (!file.path.includes('/materials/')) return file
  const containers = file.text.match(/^ {2}- \{ number: .* net: /gmu)?.length ?? 1
  const text = file.text
    .replace(/^quantity: .*$/mu, `quantity: ${containers * PLENTY_kg} kg`)
    .replace(/^( {2}- \{ number: .* net: )[\d.]+ k?g.*\}$/gmu, `$1${PLENTY_kg} kg }`)
  return { ...file, text }
}

function lotFiles(index: number): SourceFile[] {
  const { folder, lot, certificate } = patterns[index % patterns.length]!
  const number = `N-${String(index).padStart(5, '0')}`
  const record = read(join(folder, `${lot}.yaml`))
  const paper = read(join('certificates', `${certificate}.yaml`))
  return [
    {
      path: `content/${folder}/${number}.yaml`,
      text: shifted(record.text, index).replace(/^lot: .*$/mu, `lot: ${number}`)
    },
    {
      path: `content/certificates/C-${number}-r1.yaml`,
      text: paper.text
        .replace(/^lot: .*$/mu, `lot: ${number}`)
        .replace(/^number: .*$/mu, `number: C-${number}`)
    }
  ]
}

/** Other readings for each lot, the figures nearly the same: no two lots may seem copied. */
const shifted = (text: string, index: number) =>
  text
    .replace(
      /^( {6}- \{ mass: [\d.]+) g/gmu,
      (_, head: string) => `${head}${String(index).padStart(5, '0')} g`
    )
    .replace(
      /\b(dish|before|after): ([\d.]+) g/gu,
      (_, name: string, mass: string) => `${name}: ${(Number(mass) + index * 0.0001).toFixed(4)} g`
    )
