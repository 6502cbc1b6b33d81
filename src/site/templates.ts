/**
 * Templates for Eleventy, each compiled once.
 *
 * Left to itself Eleventy compiles a template for every page anew, and for every page's address as well.
 */

import type { NunjucksEngine, Template, UserConfig } from '@11ty/eleventy'

/** What templates may use beside the page's data, in the language of the site that is rendered. */
export interface TemplateTools {
  /** By name. */
  readonly filters: Readonly<Record<string, unknown>>
  readonly words: unknown
}

/**
 * Let an Eleventy render `.njk` by its own Nunjucks.
 *
 * @param tools asked for at every page, the same object for the same language: a site may change
 *   between two builds
 * @param finish what is handed on of a page that is rendered: its text or its bytes
 */
export function useTemplates(
  config: UserConfig,
  tools: () => TemplateTools,
  finish: (page: string) => string | Uint8Array
): void {
  const templates = new Map<string, Template>()
  let engine: NunjucksEngine
  let inUse: TemplateTools | undefined
  config.on('eleventy.engine.njk', made => {
    engine = made
    templates.clear()
    inUse = undefined
  })
  const takeUp = (wanted: TemplateTools): void => {
    if (wanted === inUse) return
    const { environment } = engine
    // Straight into Nunjucks: a filter added to Eleventy copies page data at every call. As a global,
    // words are known to macros as well.
    for (const [name, filter] of Object.entries(wanted.filters)) environment.addFilter(name, filter)
    environment.addGlobal('words', wanted.words)
    inUse = wanted
  }
  const compiled = (text: string, path: string): Template => {
    const key = `${path}\n${text}`
    const template =
      templates.get(key) ?? new engine.nunjucks.Template(text, engine.environment, path, false)
    templates.set(key, template)
    takeUp(tools())
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
