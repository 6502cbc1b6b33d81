import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { useMemory } from './tests/quick-folder.ts'

useMemory()

// As bin/bundle.js has it: the same, and quicker.
const yaml = fileURLToPath(new URL('node_modules/yaml/browser/index.js', import.meta.url))

/** One more than two processors: now and then a file waits for a program it started. */
const WORKERS = Math.max(3, Math.min(6, availableParallelism()))

/**
 * What starts programs and browsers comes first: such a file takes as long as fifty others, and one that
 * is left to the end leaves the other processors idle.
 */
class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files)
    const isLong = ({ moduleId }: TestSpecification) =>
      /\/tests\/(?:browser|cli|site)\/|properties\.test/u.test(moduleId)
    return [...sorted.filter(isLong), ...sorted.filter(file => !isLong(file))]
  }
}

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/global-setup.ts'],
    setupFiles: ['tests/between-tests.ts'],
    watch: false,
    alias: [{ find: /^yaml$/u, replacement: yaml }],
    sequence: { sequencer: LongFirst },
    // Files share a few processes, and what each has loaded: loading the program anew for every file
    // took as long as the tests. A file must therefore leave behind what it found: environment,
    // current folder, modules. Processes, not threads, as only they have a current folder.
    pool: 'forks',
    isolate: false,
    // Room for new objects, and functions compiled anew only once they run long, as bin/bundle.js has it.
    poolOptions: {
      forks: { execArgv: ['--max-semi-space-size=64', '--interrupt-budget=500000'] }
    },
    // As many to begin with as there may be: one put to rest in between is ended with its next file.
    minWorkers: WORKERS,
    maxWorkers: WORKERS,
    // Some tests start whole programs, on machines with two cores.
    testTimeout: 60_000,
    hookTimeout: 60_000
  }
})
