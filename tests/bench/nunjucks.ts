/** Pages by Nunjucks alone: what any way of writing them has to pay. */

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import type { SiteDocument } from '../../src/documents/types.ts'
import { version } from '../../src/site/project.ts'
import { steps } from '../../src/site/steps.ts'

interface Template {
  render(context: object): string
}

interface Environment {
  addFilter(name: string, filter: unknown): void
  addGlobal(name: string, value: unknown): void
}

interface Nunjucks {
  readonly Environment: new (loader: object, options: object) => Environment
  readonly FileSystemLoader: new (folders: string[]) => object
  readonly Template: new (
    source: string,
    environment: Environment,
    path: string,
    eager: boolean
  ) => Template
}

/** Eleventy's own Nunjucks, so that both sides run the same code. */
const nunjucks = createRequire(createRequire(import.meta.url).resolve('@11ty/eleventy'))(
  'nunjucks'
) as Nunjucks

/** Render every page of `site` below `folder`. */
export function bareNunjucks(site: SiteDocument, folder: string): void {
  const environment = new nunjucks.Environment(
    new nunjucks.FileSystemLoader(['templates/_includes', 'templates']),
    { autoescape: true }
  )
  const { filters, words } = steps.templateTools(site)
  for (const [name, filter] of Object.entries(filters)) environment.addFilter(name, filter)
  environment.addGlobal('words', words)
  const render = pageRenderer(environment, site)
  const page = (name: string, file: string, data: Record<string, unknown> = {}) =>
    write(folder, file, render(name, urlOf(file), data))
  const paged = <Item extends { readonly url: string }>(
    name: string,
    items: readonly Item[],
    alias: string
  ) => {
    for (const item of items) page(name, `${item.url}index.html`, { [alias]: item })
  }
  for (const lot of site.lots) page('lot.njk', `${lot.document.url}index.html`, { page_lot: lot })
  paged('grade.njk', site.grades, 'grade')
  paged('list.njk', site.lists, 'list')
  paged('watch.njk', site.watches, 'watch')
  paged('certificate.njk', site.certificates, 'certificate')
  for (const [name, file] of singlePages) page(name, file)
}

/** Templates of one page each, and their files. */
const singlePages = [
  ['index.njk', 'index.html'],
  ['404.njk', '404.html'],
  ...['lots', 'grades', 'certificates', 'verify', 'compare', 'choose'].map(
    name => [`${name}.njk`, `${name}/index.html`] as const
  )
] as const

function pageRenderer(environment: Environment, site: SiteDocument) {
  const compiled = new Map<string, Template>()
  return (name: string, url: string, data: Record<string, unknown>): string => {
    const path = join('templates', name)
    const template =
      compiled.get(name) ?? new nunjucks.Template(withoutFrontMatter(path), environment, path, true)
    compiled.set(name, template)
    return template.render({ ...data, site, version, page: { url } })
  }
}

/** The page's address, as Eleventy gives it to templates. */
const urlOf = (file: string): string => `/${file.replace(/(?:^|(?<=\/))index\.html$/u, '')}`

const withoutFrontMatter = (path: string) =>
  readFileSync(path, 'utf8').replace(/^---\n[^]*?\n---\n/u, '')

function write(folder: string, path: string, text: string): void {
  const full = join(folder, 'bare', path)
  mkdirSync(dirname(full), { recursive: true })
  writeFileSync(full, text)
}
