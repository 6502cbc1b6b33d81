import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { useMemory } from './tests/quick-folder.ts'

useMemory()

// As bin/bundle.js has it: the same, and quicker.
const yaml = fileURLToPath(new URL('node_modules/yaml/browser/index.js', import.meta.url))

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/global-setup.ts'],
    setupFiles: ['tests/between-tests.ts'],
    watch: false,
    alias: [{ find: /^yaml$/u, replacement: yaml }],
    // Files share two processes, and what each has loaded: loading the program anew for every file
    // took as long as the tests. A file must therefore leave behind what it found: environment,
    // current folder, modules. Processes, not threads, as only they have a current folder.
    pool: 'forks',
    isolate: false,
    poolOptions: { forks: { execArgv: ['--max-semi-space-size=64'] } },
    minWorkers: 1,
    maxWorkers: 2,
    // Some tests start whole programs, on machines with two cores.
    testTimeout: 60_000,
    hookTimeout: 60_000
  }
})
