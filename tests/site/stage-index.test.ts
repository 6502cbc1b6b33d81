/** The stage that an uptake would stand for proves nothing, and says so wherever it is printed. */

import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { pageTexts } from '../pdf/inspect.ts'
import { requireTool } from '../tools.ts'
import { builtDemo } from './built-demo.ts'
import { lotfolio, smallWorkplace } from './workplace.ts'

const PATIENCE_MS = 300_000

const filesIn = (folder: string, ending: string) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith(ending))
    .map(name => join(folder, name))

/** What stands around each mention of an equivalent stage. */
const mentions = (text: string): string[] =>
  [...text.replace(/\s+/gu, ' ').matchAll(/equivalent stage(?! sits).{0,14}/giu)].map(
    ([found]) => found
  )

const unlabelled = (texts: readonly string[]) =>
  texts.flatMap(mentions).filter(found => !/^equivalent stage, ?index only/iu.test(found))

test(
  'on every page',
  async () => {
    const pages = filesIn(await builtDemo('workshop'), '.html').map(file =>
      readFileSync(file, 'utf8')
    )
    const lots = pages.filter(text => mentions(text).length > 0)
    expect(lots.length).toBeGreaterThan(10)
    expect(unlabelled(lots)).toEqual([])
  },
  PATIENCE_MS
)

test(
  'in all data: each figure of that key is titled so',
  async () => {
    const files = filesIn(await builtDemo('workshop'), 'data.json')
    const figures = files.flatMap(file => {
      const { process } = JSON.parse(readFileSync(file, 'utf8')) as {
        process?: Readonly<Record<string, { readonly title: string }>> | null
      }
      return process?.['stage-index'] ? [process['stage-index'].title] : []
    })
    expect(figures.length).toBeGreaterThan(10)
    expect(new Set(figures)).toEqual(new Set(['Equivalent stage, index only']))
  },
  PATIENCE_MS
)

test.skipIf(!requireTool('pdftotext', 'poppler-utils'))(
  'in every PDF that has it',
  async () => {
    const lots = join(await builtDemo('workshop'), 'lots')
    const files = ['EB-26-001', 'EB-26-013', 'EB-26-015'].flatMap(lot =>
      filesIn(join(lots, lot), '.pdf')
    )
    const texts = files.map(file => pageTexts(readFileSync(file)).join(' '))
    expect(texts.filter(text => mentions(text).length > 0).length).toBeGreaterThan(2)
    expect(unlabelled(texts)).toEqual([])
  },
  PATIENCE_MS
)

test(
  'by explain, and nowhere in public',
  async () => {
    const { stdout } = await lotfolio(['explain', 'EB-1', 'stage-index'], smallWorkplace())
    expect(stdout).toContain('EB-1  Equivalent stage, index only')
    expect(unlabelled([stdout])).toEqual([])
    const site = await builtDemo('public')
    expect(existsSync(site)).toBe(true)
    const open = [...filesIn(site, '.html'), ...filesIn(site, '.json')]
    expect(
      open.filter(file => /equivalent stage|stage-index/iu.test(readFileSync(file, 'utf8')))
    ).toEqual([])
  },
  PATIENCE_MS
)
