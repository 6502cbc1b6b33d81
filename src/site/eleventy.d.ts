/** The part of Eleventy used here; it brings no types of its own. */
declare module '@11ty/eleventy' {
  export interface BuildEvent {
    readonly directories: { readonly input: string; readonly output: string }
    readonly results: readonly { readonly outputPath: string | false }[]
  }

  export interface UserConfig {
    readonly ignores: Set<string>
    addPlugin<Options>(
      plugin: (config: UserConfig, options: Options) => void,
      options: Options
    ): void
    addFilter(name: string, filter: unknown): void
    amendLibrary(
      engine: 'njk',
      amend: (nunjucks: { addFilter(name: string, filter: unknown): void }) => void
    ): void
    addGlobalData(name: string, data: unknown): void
    on(
      event: 'eleventy.before' | 'eleventy.after',
      handle: (event: BuildEvent) => Promise<void>
    ): void
    setQuietMode(quiet: boolean): void
    setTemplateFormats(formats: readonly string[]): void
    setUseGitIgnore(use: boolean): void
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
