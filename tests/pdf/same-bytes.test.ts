import { describe, expect, it } from 'vitest'
import { certificatePdf } from '../../src/pdf/certificate.ts'
import { fontOf } from '../../src/pdf/fonts.ts'
import { certificateDocument } from '../fixtures/documents.ts'
import { bundleSamples, madeElsewhere } from './elsewhere.ts'
import { accentedDocument, attachment, longDocument } from './samples.ts'

bundleSamples()

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => Buffer.from(a).equals(Buffer.from(b))

describe('the same document gives the same bytes', () => {
  it('twice in one process', async () => {
    const first = await certificatePdf(longDocument, attachment)
    expect(sameBytes(await certificatePdf(longDocument, attachment), first)).toBe(true)
  })

  it.each([
    ['Pacific/Kiritimati', 'de_DE.UTF-8'],
    ['America/St_Johns', 'tr_TR.UTF-8']
  ])('in %s under %s, whatever was made before', async (timeZone, locale) => {
    const letters = 'ÄÖÜäöüéèêëïîíìłñçåøĳ ¼½¾ 3x9 -> != áàâ ẽ ⅓'
    const before = { ...certificateDocument, statements: [letters, letters.normalize('NFD')] }
    await certificatePdf({ ...before, decisionRule: letters }, attachment)
    const here = await certificatePdf(accentedDocument, attachment)
    expect(sameBytes(madeElsewhere('certificate', timeZone, locale), here)).toBe(true)
  })

  it('and another document gives others', async () => {
    const dated = { ...certificateDocument, dated: '2026-03-20' }
    const [one, other] = await Promise.all([
      certificatePdf(certificateDocument, attachment),
      certificatePdf(dated, attachment)
    ])
    expect(sameBytes(one, other)).toBe(false)
  })
})

describe('speed', () => {
  it('fonts are never compared by their name records', async () => {
    let comparisons = 0
    const { name } = fontOf('regular') as unknown as { name: { records: object } }
    Object.defineProperty(name.records, 'toJSON', {
      configurable: true,
      value: () => (comparisons += 1)
    })
    await certificatePdf(certificateDocument, attachment)
    Reflect.deleteProperty(name.records, 'toJSON')
    expect(comparisons).toBe(0)
  })

  it('a font is parsed once', () => {
    expect(fontOf('regular')).toBe(fontOf('regular'))
  })
})
