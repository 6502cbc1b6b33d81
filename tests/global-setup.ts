/** One temporary folder for a whole run, gone at its end however many files used it. */

import { mkdtempSync, realpathSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder for what the tests of a run share. */
    readonly runFolder: string
  }
}

export default function setUp(project: TestProject): () => void {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'lotfolio run ')))
  project.provide('runFolder', folder)
  return () => rmSync(folder, { recursive: true, force: true })
}
