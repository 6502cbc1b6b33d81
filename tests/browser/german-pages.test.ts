/** The public site in German: nothing English is left on its pages, and readers of any kind can use them. */

import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { SiteDocument } from '../../src/documents/types.ts'
import { units } from '../../src/metrology/units.ts'
import { buildDocuments } from '../../src/pipeline.ts'
import { loadContent } from '../../src/records/content.ts'
import { demoRegister } from '../documents/demo-register.ts'
import { textsOf, wordsIn } from '../documents/language-texts.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'
import { readPictures } from '../../src/site/read-pictures.ts'
import { root } from '../root.ts'
import { bringAxe, faultsIn, foldWhatRepeats, type Kinds, overflowIn } from './axe.ts'
import { leaveChromium, requireChromium, sharedChromium } from './chromium.ts'
import { pagesIn, removeFolder, renderPages } from './render-pages.ts'

const files = withChange(
  demoFiles,
  'producer.yaml',
  'paper: A4',
  'paper: A4\nsite-languages: [de, en]'
)
const { site: whole, problems } = buildDocuments(files, {
  edition: 'public',
  register: demoRegister,
  pictures: await readPictures(join(root, 'content'))
})

const loaded = loadContent(demoFiles)
if (!loaded.ok) throw new Error('the demo has errors')
const content = loaded.value

/** Lots of both kinds, rolled, called back, under concession, with thickness fields, panels, editions. */
const chosen = ['EB-26-007', 'EB-26-008', 'EB-26-012', 'FL-26-002', 'FL-26-013', 'FL-26-015']

const withChosen = (site: SiteDocument): SiteDocument => ({
  ...site,
  others: [],
  folder: '',
  lots: site.summaries.flatMap(({ lot }, index) => (chosen.includes(lot) ? site.lots[index]! : []))
})

const [german, english] = whole!.forms!.map(withChosen)

/** What a reader sees or is read, but for what is marked as being in another language. */
function shownOn(folder: string, path: string, language = 'de'): string {
  const html = readFileSync(join(folder, path), 'utf8')
  const body = html
    .slice(html.indexOf('<title>'))
    .replace(/<script.*?<\/script>|<style.*?<\/style>/gsu, '')
    .replace(/<span class="unbroken">(.*?)<\/span>/gu, '$1')
    .replace(new RegExp(`<(\\w+)(?=[^>]* lang="(?!${language})).*?</\\1>`, 'gsu'), '')
    .replace(/<span class="fingerprint.*?<\/span>|<meta property="og:(?:url|type).*?>/gsu, '')
    .replace(/https?:\S+/gu, ' ')
  const attributes = body.matchAll(/ (?:aria-label|alt|title|data-label|content)="([^"]*)"/gu)
  return [body.replace(/<[^>]+>/gu, ' '), ...[...attributes].map(([, text]) => text)]
    .join(' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&amp;', '&')
    .replace(/\s+/gu, ' ')
}

describe('the pages in German', () => {
  let folder = ''
  let other = ''
  let pages: readonly string[] = []

  beforeAll(async () => {
    folder = await renderPages(german!, english)
    other = await renderPages(english!)
    pages = pagesIn(folder)
  }, 240_000)
  afterAll(async () => {
    for (const one of [folder, other]) await removeFolder(one)
  })

  test('are built without a complaint, as many as in English', () => {
    expect(problems.filter(({ code }) => code === 'MISSING_TEXT')).toEqual([])
    expect(pages).toEqual(pagesIn(other))
    expect(pages.length).toBeGreaterThan(30)
  })

  test('say what language they are in', () => {
    for (const page of pages)
      expect(readFileSync(join(folder, page), 'utf8')).toContain('<html lang="de"')
  })

  test('have no text of the English catalogue, and no word that English pages alone have', () => {
    const ours = new Set(textsOf('de'))
    const theirs = textsOf('en')
      .map(text => text.trim())
      .filter(text => /\p{L}{3,}\s+\p{L}{3,}/u.test(text) && !ours.has(text))
    expect(theirs.length).toBeGreaterThan(400)
    const translated = demoFiles
      .filter(({ path }) => path.endsWith('translations/de.yaml'))
      .flatMap(({ text }) => text.match(/(?<=\n {4}as: ).*/gu) ?? [])
    // Names, codes and addresses are the same in any language, as are the law's words for classes.
    const names = [
      ...demoFiles
        .filter(({ path }) => path.endsWith('producer.yaml'))
        .map(({ text }) => text.slice(0, 400)),
      ...[...content.instruments.values()].flatMap(({ record: { id, calibration } }) => [
        id,
        calibration?.laboratory ?? '',
        // One told in words is a text, and is translated.
        /\s/u.test(calibration?.certificate ?? '') ? '' : (calibration?.certificate ?? '')
      ]),
      ...[...content.titrants.keys(), ...content.grades.keys()],
      ...Object.keys(units),
      ...[...content.batches.values(), ...content.foils.values()].flatMap(({ record }) =>
        Object.values(record.reported ?? {}).flatMap(one => [
          one?.laboratory ?? '',
          one?.report ?? ''
        ])
      ),
      // The law's words for a class, and what sheets of a roll are called.
      'Eye Irrit ppm Rev head tail'
    ]
    const allowed = new Set([...ours, ...translated, ...names, ...chosen].flatMap(wordsIn))
    const foreign = new Set(
      pages
        .flatMap(page => wordsIn(shownOn(other, page, 'en')))
        .filter(word => word.length > 2 && !allowed.has(word))
    )
    for (const word of ['the', 'within', 'measured', 'released']) expect(foreign).toContain(word)
    const found = pages.flatMap(page => {
      const text = shownOn(folder, page)
      return [
        ...theirs.filter(one => text.includes(one)),
        ...new Set(wordsIn(text).filter(word => foreign.has(word)))
      ].map(one => `${page}: ${one}`)
    })
    expect(found).toEqual([])
  })

  test('print figures with commas', () => {
    const text = shownOn(folder, 'lots/FL-26-013/index.html')
    expect(text).toContain('0,5014')
    expect(text).not.toMatch(/\d\.\d+ (?:mm|MPa|%|g)/u)
    const list = shownOn(folder, 'lots/index.html')
    expect(list).toMatch(/Blähvolumen \d+,\d ± \d,\d mL\/g/u)
  })

  describe.skipIf(!requireChromium())('in Chromium', () => {
    let browser: Browser
    let page: Page
    const said: string[] = []
    const seen: Kinds = new Set()
    const show = (path: string) => page.goto(`${pathToFileURL(folder).href}/${path}`)

    beforeAll(async () => {
      browser = await sharedChromium()
      const context = await browser.newContext()
      page = await context.newPage()
      await bringAxe(page)
      page.on('pageerror', error => said.push(error.message))
      page.on('console', message => said.push(message.text()))
    }, 60_000)
    afterAll(leaveChromium)

    test.for([
      'index.html',
      'grades/foil-100/index.html',
      'grades/foil-100/watch/index.html',
      'certificates/index.html',
      'verify/index.html'
    ])('axe finds nothing on %s, nor does it stick out', { timeout: 120_000 }, async path => {
      await show(path)
      expect(await faultsIn(page, seen)).toEqual({})
    })

    test.for(['FL-26-013', 'EB-26-007'])(
      'nor on %s with workings unfolded; nor does it stick out, folded or with every one unfolded',
      { timeout: 120_000 },
      async lot => {
        await show(`lots/${lot}/index.html`)
        expect(await overflowIn(page)).toEqual([])
        const workings = '#workings ~ div details'
        expect(await page.locator(workings).count()).toBeGreaterThan(8)
        await page.evaluate(
          `for (const one of document.querySelectorAll('${workings}')) one.open = true`
        )
        expect(await overflowIn(page)).toEqual([])
        const folded = await foldWhatRepeats(page, workings)
        expect(folded).toBeGreaterThan(0)
        expect(await faultsIn(page, seen)).toEqual({})
      }
    )

    test('on a phone a row of results begins with its verdict', async () => {
      await page.setViewportSize({ width: 390, height: 844 })
      await show('lots/FL-26-013/index.html')
      const top = (label: string) =>
        page.evaluate<number>(
          `document.querySelector('.results [data-label="${label}"]').getBoundingClientRect().top`
        )
      expect(await top('Bewertung')).toBeLessThan(await top('Ergebnis'))
    })

    test('lots are found, chosen and compared in German', { timeout: 120_000 }, async () => {
      await show('lots/index.html')
      await page.fill('#find-text', 'FL-26-01')
      await page.waitForSelector('#found table')
      expect(await page.textContent('#find-count')).toMatch(/^\d+ von \d+ Chargen$/u)
      // Figures of a column come with its file, after the lots themselves.
      await page.waitForFunction(
        "/konform.*freigegeben.*\\d,\\d/su.test(document.querySelector('#found tbody').textContent)"
      )
      expect(await page.textContent('#found thead')).toContain('Hergestellt')
      await show('compare/index.html#with=FL-26-013+FL-26-015')
      await page.waitForSelector('.compared')
      const text = (await page.textContent('#compared'))!
      expect(text).toContain('0,5014 ± 0,0033 mm')
      expect(text).toContain('Grenzwert 0,47 bis 0,53')
      expect(text).toMatch(/mehr, als sie unsicher sind/u)
      expect(await faultsIn(page, seen)).toEqual({})
    })

    test('a need is answered in German', { timeout: 120_000 }, async () => {
      await show('choose/index.html')
      await page.fill('.needs input >> nth=0', '0,4')
      await page.waitForSelector('.standing b')
      expect(await page.textContent('.answers')).toMatch(/durch garantierten Grenzwert erfüllt/u)
      expect(await faultsIn(page, seen)).toEqual({})
    })

    test('a file that is no certificate is told in German', { timeout: 60_000 }, async () => {
      await show('verify/index.html')
      await page.setInputFiles('#copy', {
        name: 'x.txt',
        mimeType: 'text/plain',
        buffer: Buffer.from('x')
      })
      await page.waitForSelector('.verdict-word')
      expect(await page.textContent('#outcome')).toContain('Die Datei ist weder PDF noch JSON.')
      // Pictures are not part of these pages.
      expect(said.filter(text => !/Failed to load resource/u.test(text))).toEqual([])
    })
  })
})
