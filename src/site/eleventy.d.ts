/** The part of Eleventy used here; it brings no types of its own. */
declare module '@11ty/eleventy' {
  export interface BuildEvent {
    readonly directories: { readonly input: string; readonly output: string }
    readonly results: readonly { readonly outputPath: string | false }[]
  }

  /** What is made of a template's text: functions that are given all they use. */
  export interface CompiledTemplate {
    readonly type: 'code'
    readonly obj: Readonly<Record<string, unknown>>
  }

  export interface Template {
    render(data: object): string
    readonly rootRenderFunc: unknown
    readonly blocks: Readonly<Record<string, unknown>>
  }

  /** Where templates find those that they extend or take parts of; null where there is none. */
  export interface TemplateLoader {
    getSource(
      name: string
    ): { readonly src: string | CompiledTemplate; readonly path: string } | null
  }

  export interface NunjucksEnvironment {
    readonly loaders: readonly TemplateLoader[]
    addFilter(name: string, filter: unknown): void
    addGlobal(name: string, value: unknown): void
  }

  /** The Nunjucks an Eleventy renders with, and how it is set up. */
  export interface NunjucksEngine {
    readonly nunjucks: {
      readonly Template: new (
        text: string | CompiledTemplate,
        environment: NunjucksEnvironment,
        path: string,
        eager: boolean
      ) => Template
    }
    readonly environment: NunjucksEnvironment
  }

  type Compile<Result> = (text: string, path: string) => (data: object) => Result

  /** How files of an extension become pages. */
  export interface TemplateLanguage {
    readonly compile: Compile<string | Uint8Array>
    readonly compileOptions: {
      readonly cache: boolean
      readonly permalink: Compile<string>
    }
  }

  export interface UserConfig {
    readonly ignores: Set<string>
    addPlugin<Options>(
      plugin: (config: UserConfig, options: Options) => void,
      options: Options
    ): void
    addFilter(name: string, filter: unknown): void
    addExtension(extension: string, language: TemplateLanguage): void
    addGlobalData(name: string, data: unknown): void
    on(
      event: 'eleventy.before' | 'eleventy.after',
      handle: (event: BuildEvent) => Promise<void>
    ): void
    on(event: 'eleventy.engine.njk', handle: (engine: NunjucksEngine) => void): void
    setQuietMode(quiet: boolean): void
    setTemplateFormats(formats: readonly string[]): void
    setUseGitIgnore(use: boolean): void
    setUseTemplateCache(use: boolean): void
  }

  export default class Eleventy {
    constructor(
      input: string,
      output: string,
      options: {
        readonly quietMode: boolean
        readonly configPath: false
        readonly config: (config: UserConfig) => void
      }
    )
    disableLogger(): void
    write(): Promise<readonly [copied: unknown, pages: BuildEvent['results']]>
  }
}
