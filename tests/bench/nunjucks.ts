/** Pages by Nunjucks alone: what any way of writing them has to pay. */

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import type {
  GradeDocument,
  LotListPage,
  LotPage,
  SiteDocument
} from '../../src/documents/types.ts'
import { version } from '../../src/site/project.ts'
import { filters } from '../../src/site/steps.ts'

interface Template {
  render(context: object): string
}

interface Environment {
  addFilter(name: string, filter: unknown): void
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
  for (const [name, filter] of Object.entries(filters)) environment.addFilter(name, filter)
  const render = pageRenderer(environment, site)
  for (const lot of site.lots)
    write(folder, `${lot.document.url}index.html`, render('lot.njk', { page_lot: lot }))
  for (const grade of site.grades)
    write(folder, `${grade.url}index.html`, render('grade.njk', { grade }))
  for (const list of site.lists)
    write(folder, `${list.url}index.html`, render('list.njk', { list }))
  write(folder, 'index.html', render('index.njk', {}))
  write(folder, 'lots/index.html', render('lots.njk', {}))
  write(folder, 'grades/index.html', render('grades.njk', {}))
}

function pageRenderer(environment: Environment, site: SiteDocument) {
  const compiled = new Map<string, Template>()
  return (name: string, data: Record<string, unknown>): string => {
    const path = join('templates', name)
    const template =
      compiled.get(name) ?? new nunjucks.Template(withoutFrontMatter(path), environment, path, true)
    compiled.set(name, template)
    return template.render({ ...data, site, version, page: { url: urlOf(name, data) } })
  }
}

/** The page's address, as Eleventy gives it to templates. */
function urlOf(name: string, { page_lot: lot, grade, list }: Record<string, unknown>): string {
  if (list) return `/${(list as LotListPage).url}`
  if (lot) return `/${(lot as LotPage).document.url}`
  if (grade) return `/${(grade as GradeDocument).url}`
  return name === 'index.njk' ? '/' : `/${name.replace('.njk', '/')}`
}

const withoutFrontMatter = (path: string) =>
  readFileSync(path, 'utf8').replace(/^---\n[^]*?\n---\n/u, '')

function write(folder: string, path: string, text: string): void {
  const full = join(folder, 'bare', path)
  mkdirSync(dirname(full), { recursive: true })
  writeFileSync(full, text)
}
