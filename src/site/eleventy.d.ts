/** The part of Eleventy used here; it brings no types of its own. */
declare module '@11ty/eleventy' {
  export interface BuildEvent {
    readonly directories: { readonly input: string; readonly output: string }
    readonly results: readonly { readonly outputPath: string | false }[]
  }

  export interface Template {
    render(data: object): string
  }

  export interface NunjucksEnvironment {
    addFilter(name: string, filter: unknown): void
    addGlobal(name: string, value: unknown): void
  }

  /** The Nunjucks an Eleventy renders with, and how it is set up. */
  export interface NunjucksEngine {
    readonly nunjucks: {
      readonly Template: new (
        text: string,
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
