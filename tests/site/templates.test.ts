import type { NunjucksEngine, TemplateLanguage, UserConfig } from '@11ty/eleventy'
import { createRequire } from 'node:module'
import { describe, expect, test, vi } from 'vitest'
import { useTemplates } from '../../src/site/templates.ts'

type Nunjucks = NunjucksEngine['nunjucks'] & { readonly Environment: new () => never }

const nunjucks = createRequire(createRequire(import.meta.url).resolve('@11ty/eleventy'))(
  'nunjucks'
) as { readonly Template: Nunjucks['Template']; readonly Environment: Nunjucks['Environment'] }

/** What Eleventy is told, and the templates that are compiled. */
function configured(finish: (page: string) => string | Uint8Array) {
  const compiled: string[] = []
  let language: TemplateLanguage | undefined
  let start: ((engine: NunjucksEngine) => void) | undefined
  const config = {
    addExtension: (_: string, added: TemplateLanguage) => (language = added),
    on: (_: string, handle: (engine: NunjucksEngine) => void) => (start = handle)
  }
  const tools = { filters: { twice: (text: string) => text + text }, words: { hello: 'Hallo' } }
  useTemplates(config as unknown as UserConfig, () => tools, finish)
  const Template = vi.fn(function (...args: ConstructorParameters<Nunjucks['Template']>) {
    compiled.push(args[0])
    return new nunjucks.Template(...args)
  })
  const begin = () =>
    start!({ nunjucks: { Template: Template as never }, environment: new nunjucks.Environment() })
  begin()
  return { language: language!, compiled, begin }
}

describe('templates', () => {
  test('are compiled once, however many pages they make, and once for all addresses', () => {
    const { language, compiled } = configured(page => page)
    const { compile, compileOptions } = language
    const pages = ['a', 'b'].map(name => compile('{{ name | twice }}', 'x.njk')({ name }))
    const addresses = ['a', 'b'].map(name =>
      compileOptions.permalink('{{ name }}/index.html', 'x.njk')({ name })
    )
    expect(pages).toEqual(['aa', 'bb'])
    expect(addresses).toEqual(['a/index.html', 'b/index.html'])
    expect(compiled).toEqual(['{{ name | twice }}', '{{ name }}/index.html'])
  })

  test('of one text in two files stay two', () => {
    const { language, compiled } = configured(page => page)
    for (const path of ['x.njk', 'y.njk']) language.compile('text', path)({})
    expect(compiled).toEqual(['text', 'text'])
  })

  test('are compiled anew when Eleventy begins anew, as files may have changed', () => {
    const { language, compiled, begin } = configured(page => page)
    language.compile('text', 'x.njk')({})
    begin()
    language.compile('text', 'x.njk')({})
    expect(compiled).toEqual(['text', 'text'])
  })

  test('hand on pages finished, addresses as text', () => {
    const { language } = configured(page => Buffer.from(page, 'utf8'))
    expect(language.compile('é', 'x.njk')({})).toEqual(Buffer.from('é', 'utf8'))
    expect(language.compileOptions.permalink('é', 'x.njk')({})).toBe('é')
  })

  test('escape what they print', () => {
    const { language } = configured(page => page)
    expect(language.compile('{{ name }}', 'x.njk')({ name: '<b>' })).toBe('&lt;b&gt;')
  })
})
