/**
 * Memory of a whole build against plain Eleventy that writes the same pages, given to it finished:
 * no template to render, no data, no papers. It is the least that Eleventy alone can take for them.
 */

import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { basename, dirname, join } from 'node:path'
import { generateWorkshop } from './generate.ts'
import { buildCost, type Cost, costOf, inFolder, writeFiles } from './process.ts'

const eleventy = join(
  dirname(createRequire(import.meta.url).resolve('@11ty/eleventy')),
  '..',
  'cmd.cjs'
)

/** HTML as it stands: it holds no template to look for. */
const CONFIG = `export default () => ({ htmlTemplateEngine: false, dir: { input: 'pages', output: 'plain' } })\n`

export const benchPlain = (lots: number): Promise<string> =>
  inFolder(folder => {
    writeFiles(folder, generateWorkshop(lots))
    const whole = buildCost(folder)
    const pages = pagesOf(join(folder, '_site'))
    for (const page of pages) cpSync(join(folder, '_site', page), join(folder, 'pages', page))
    writeFileSync(join(folder, 'eleventy.config.mjs'), CONFIG)
    const plain = costOf([eleventy, '--quiet', '--formats=html'], folder)
    for (const page of pages) refuseDifference(folder, page)
    return Promise.resolve(report(lots, whole, plain))
  })

function report(lots: number, whole: Cost, plain: Cost): string {
  const ratio = whole.peak_MB / plain.peak_MB
  const line = (name: string, { peak_MB, time_s }: Cost) =>
    `  ${name.padEnd(44)} ${peak_MB.toFixed(0).padStart(7)} MB ${time_s.toFixed(1).padStart(8)} s`
  return [
    `Memory beside plain Eleventy, ${lots} lots: ${ratio.toFixed(2)} × (target ≤ 1.3: ${ratio <= 1.3 ? 'met' : 'missed'})`,
    line('whole build: records, pages, papers, data', whole),
    line('plain Eleventy, the same pages finished', plain)
  ].join('\n')
}

const pagesOf = (site: string): string[] =>
  readdirSync(site, { recursive: true, encoding: 'utf8' }).filter(
    path => basename(path) === 'index.html'
  )

/** Two builds compare only where they write the same. */
function refuseDifference(folder: string, page: string): void {
  const [one, other] = ['_site', 'plain'].map(side => readFileSync(join(folder, side, page)))
  if (!one!.equals(other!)) throw new Error(`plain Eleventy wrote another page at ${page}`)
}
