import type { NunjucksEngine, TemplateLanguage, UserConfig } from '@11ty/eleventy'
import { createRequire } from 'node:module'
import { describe, expect, test, vi } from 'vitest'
import { useTemplates } from '../../src/site/templates.ts'

type Nunjucks = NunjucksEngine['nunjucks'] & {
  readonly Environment: new (loader?: object) => NunjucksEngine['environment']
}

const nunjucks = createRequire(createRequire(import.meta.url).resolve('@11ty/eleventy'))(
  'nunjucks'
) as { readonly Template: Nunjucks['Template']; readonly Environment: Nunjucks['Environment'] }

/** A folder of templates, with all in it that a loader has. */
const loaderOf = (files: Readonly<Record<string, string>>) => ({
  cache: {},
  on: () => undefined,
  getSource: (name: string) =>
    files[name] === undefined ? null : { src: files[name], path: name, noCache: false }
})

/** What Eleventy is told, and the templates that are compiled. */
function configured(
  finish: (page: string) => string | Uint8Array,
  { hello = 'Hallo', files = {} }: { hello?: string; files?: Record<string, string> } = {}
) {
  const compiled: string[] = []
  let language: TemplateLanguage | undefined
  let start: ((engine: NunjucksEngine) => void) | undefined
  const config = {
    addExtension: (_: string, added: TemplateLanguage) => (language = added),
    on: (_: string, handle: (engine: NunjucksEngine) => void) => (start = handle)
  }
  const tools = { filters: { twice: (text: string) => text + text }, words: { hello } }
  useTemplates(config as unknown as UserConfig, () => tools, finish)
  const Template = vi.fn(function (...args: ConstructorParameters<Nunjucks['Template']>) {
    if (typeof args[0] === 'string') compiled.push(args[0])
    return new nunjucks.Template(...args)
  })
  const begin = () =>
    start!({
      nunjucks: { Template: Template as never },
      environment: new nunjucks.Environment(loaderOf(files))
    })
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

  test('are compiled once for all Eleventies, and anew where a file has changed', () => {
    const first = configured(page => page)
    first.language.compile('before', 'z.njk')({})
    first.begin()
    first.language.compile('before', 'z.njk')({})
    expect(first.language.compile('after', 'z.njk')({})).toBe('after')
    expect(first.compiled).toEqual(['before', 'after'])
    const second = configured(page => page)
    expect(second.language.compile('before', 'z.njk')({})).toBe('before')
    expect(second.compiled).toEqual([])
  })

  test('say the words of their own Eleventy, in parts they take from other files as well', () => {
    const files = {
      'frame.njk':
        '{% from "macros.njk" import greet %}<{% block main %}{% endblock %}{{ greet() }}>',
      'macros.njk': '{% macro greet() %} {{ words.hello | twice }}{% endmacro %}'
    }
    const page =
      '{% extends "frame.njk" %}{% block main %}{{ words.hello }} {{ name }}{% endblock %}'
    const [german, english] = ['Hallo', 'Hello'].map(hello =>
      configured(text => text, { hello, files })
    )
    for (const name of ['a', 'b']) {
      expect(german!.language.compile(page, 'p.njk')({ name })).toBe(`<Hallo ${name} HalloHallo>`)
      expect(english!.language.compile(page, 'p.njk')({ name })).toBe(`<Hello ${name} HelloHello>`)
    }
    expect(german!.compiled).toHaveLength(3)
    expect(english!.compiled).toEqual([])
    const changed = { ...files, 'macros.njk': '{% macro greet() %}!{% endmacro %}' }
    const later = configured(text => text, { files: changed })
    expect(later.language.compile(page, 'p.njk')({ name: 'a' })).toBe('<Hallo a!>')
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
