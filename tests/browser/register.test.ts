/** The register runs unchanged in a browser, and comes to the same answers as in Node. */

import type { Browser } from 'playwright-core'
import { build } from 'vite'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { verify } from '../../src/register/verify.ts'
import { documentOf, makeSample, type Sample } from '../register/sample.ts'
import { root } from '../root.ts'
import { leaveChromium, requireChromium, sharedChromium } from './chromium.ts'

/** `src/register/verify.ts` with all it imports as one classic script that assigns `Register`. */
async function bundle(): Promise<string> {
  const lib = {
    entry: `${root}/src/register/verify.ts`,
    name: 'Register',
    formats: ['iife' as const]
  }
  const built = await build({ root, logLevel: 'silent', build: { write: false, lib } })
  const [output] = Array.isArray(built) ? built : []
  return output!.output[0].code
}

describe.skipIf(!requireChromium())('in Chromium', () => {
  let browser: Browser
  let sample: Sample
  let script: string
  beforeAll(async () => {
    sample = await makeSample()
    script = await bundle()
    browser = await sharedChromium()
  }, 60_000)
  afterAll(leaveChromium)

  test('the same words and sentences as in Node, signature included', async () => {
    const page = await browser.newPage()
    // A page of this machine is one that may hash; nothing is listening, the route answers.
    await page.route('**/*', route => route.fulfill({ contentType: 'text/html', body: '' }))
    await page.goto('http://localhost/')
    await page.addScriptTag({ content: script })
    const { published, pdfOfTwo, documents } = sample
    const { one, two, three } = documents
    const words: string[] = []
    for (const [text, pdf] of [
      [two, { sha256: pdfOfTwo }],
      [one],
      [three],
      [two, { sha256: '0'.repeat(64) }],
      [documentOf('CT-9', 1)]
    ] as const) {
      const evidence = { published, pdf }
      const call = `Register.verify(${JSON.stringify(text)}, ${JSON.stringify(evidence)})`
      const answer = await page.evaluate(call)
      expect(answer).toEqual(await verify(text, evidence))
      words.push((answer as { word: string }).word)
    }
    expect(words).toEqual(['genuine', 'superseded', 'withdrawn', 'altered', 'unknown'])
    await page.close()
  })

  test('a page by plain http says that nothing was compared', async () => {
    const page = await browser.newPage()
    await page.route('**/*', route => route.fulfill({ contentType: 'text/html', body: '' }))
    await page.goto('http://workshop.example/')
    await page.addScriptTag({ content: script })
    const call = `Register.verify('{}', { published: ${JSON.stringify(sample.published)} })`
    expect(await page.evaluate(call)).toMatchObject({
      word: 'unknown',
      sentences: [
        'Nothing was compared: this browser computes fingerprints only on pages that come by https.'
      ]
    })
    await page.close()
  })
})
