/**
 * Templates for Eleventy, each compiled once.
 *
 * Left to itself Eleventy compiles a template for every page anew, and for every page's address as well;
 * and each Eleventy all templates, though a site has two for each language of its pages.
 */

import type { CompiledTemplate, NunjucksEngine, Template, UserConfig } from '@11ty/eleventy'

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
    findShared(made)
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
      templates.get(key) ??
      new engine.nunjucks.Template(shared(engine, text, path), engine.environment, path, false)
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

/** Have templates find those that they extend, or take parts of, as they are compiled. */
function findShared(engine: NunjucksEngine): void {
  for (const loader of engine.environment.loaders) {
    const read = loader.getSource.bind(loader)
    loader.getSource = name => {
      const found = read(name)
      return found && { ...found, src: shared(engine, found.src, found.path) }
    }
  }
}

/** By path and text: what is made of a template knows neither filters nor words, but is given them. */
const shareable = new Map<string, CompiledTemplate>()

/** A template as it is compiled, by whichever Eleventy of this process came to it first. */
function shared(
  { nunjucks, environment }: NunjucksEngine,
  text: string | CompiledTemplate,
  path: string
): CompiledTemplate {
  if (typeof text !== 'string') return text
  const key = `${path}\n${text}`
  const known = shareable.get(key)
  if (known) return known
  const { rootRenderFunc, blocks } = new nunjucks.Template(text, environment, path, true)
  const named = Object.entries(blocks).map(([name, block]) => [`b_${name}`, block])
  const obj = { root: rootRenderFunc, ...Object.fromEntries(named) }
  const compiled: CompiledTemplate = { type: 'code', obj }
  shareable.set(key, compiled)
  return compiled
}
