/**
 * Templates for Eleventy, each compiled once.
 *
 * Left to itself Eleventy compiles a template for every page anew, and for every page's address as well.
 */

import type { NunjucksEngine, Template, UserConfig } from '@11ty/eleventy'

/** Filters by name. */
type Filters = Readonly<Record<string, unknown>>

/**
 * Let an Eleventy render `.njk` by its own Nunjucks, with these filters.
 *
 * @param finish what is handed on of a page that is rendered: its text or its bytes
 */
export function useTemplates(
  config: UserConfig,
  filters: Filters,
  finish: (page: string) => string | Uint8Array
): void {
  const templates = new Map<string, Template>()
  let engine: NunjucksEngine
  config.on('eleventy.engine.njk', made => {
    engine = made
    templates.clear()
    // Straight into Nunjucks: a filter added to Eleventy copies page data at every call.
    for (const [name, filter] of Object.entries(filters)) made.environment.addFilter(name, filter)
  })
  const compiled = (text: string, path: string): Template => {
    const key = `${path}\n${text}`
    const template =
      templates.get(key) ?? new engine.nunjucks.Template(text, engine.environment, path, false)
    templates.set(key, template)
    return template
  }
  config.addExtension('njk', {
    compile: (text, path) => data => finish(compiled(text, path).render(data)),
    compileOptions: {
      cache: false,
      permalink: (text, path) => data => compiled(text, path).render(data)
    }
  })
}
