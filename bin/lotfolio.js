#!/usr/bin/env node
/** Starts the program, which is TypeScript: tsx reads it where Node alone, or a tsx set up already, cannot. */

if (!(await readsTypeScript())) await setUpTypeScript()
const { main } = await import('../src/cli/main.ts')
await main(process.argv.slice(2))

async function readsTypeScript() {
  try {
    await import('./probe.ts')
    return true
  } catch {
    return false
  }
}

async function setUpTypeScript() {
  try {
    const { register } = await import('tsx/esm/api')
    register()
  } catch (error) {
    if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error
    process.stderr.write('lotfolio: its packages are not installed; run npm ci first\n')
    process.exit(1)
  }
}
