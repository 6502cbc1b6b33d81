/** The program as a bundle: TypeScript taken out and files joined, once for each state of the source. */

import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/**
 * Room for new objects stays at its first size: Node lets it grow to three times 16 MB, as much as all
 * the rest of a small build. The flag has no say once the room has grown, so it comes first.
 */
export const SMALL_NURSERY = '--semi-space-growth-factor=1'

/**
 * Functions are compiled anew, and better, only once they have run long: Node does so early, for programs
 * that run for days, and in one that ends after seconds it costs more than it gains.
 */
export const LATE_OPTIMISER = '--interrupt-budget=500000'

/** Bundles of other states of the source are cleared away after this time, in ms: one may be running. */
const KEPT_ms = 24 * 60 * 60 * 1000

/** Begins the names of folders of bundles in node_modules; old ones are cleared away. */
export const PREFIX = '.lotfolio-'

/**
 * Path of the bundle, made now if there is none of the source as it stands; undefined
 * where it cannot be made or written: for a checkout that is read only, or source that does not parse.
 *
 * It lies in a folder of node_modules, where it finds the packages, and as deep as src/site is, so
 * that the program finds its own folder the same way from either.
 *
 * @param {URL} project folder of package.json
 */
export async function bundleOf(project) {
  const root = fileURLToPath(project)
  const packages = join(root, 'node_modules')
  const state = stateOf(root)
  const folder = join(packages, `${PREFIX}${state}`)
  const file = join(folder, 'main.cjs')
  if (existsSync(file)) return file
  const fresh = `${folder}.${process.pid}`
  try {
    await bundle(root, join(fresh, 'main.cjs'), join('src', 'cli', 'main.ts'), 'cjs')
    // Edited meanwhile: nobody knows which of both it holds.
    if (stateOf(root) !== state) return undefined
    // Whole or not at all; where another process was first, its bundle is the same.
    await rename(fresh, folder).catch(error => {
      if (!existsSync(file)) throw error
    })
    await clearAway(packages, folder).catch(() => undefined)
    return file
  } catch {
    return undefined
  } finally {
    await rm(fresh, { recursive: true, force: true }).catch(() => undefined)
  }
}

/** Fingerprint of all that a bundle depends on; the lock names the packages taken in, and esbuild. */
function stateOf(root) {
  // Data files are taken into the bundle as well.
  const sources = readdirSync(join(root, 'src'), { recursive: true }).filter(name =>
    /\.(?:ts|json)$/u.test(name)
  )
  const names = [
    ...sources.map(name => join('src', name)),
    ...['tsconfig.json', 'package.json', 'package-lock.json', join('bin', 'bundle.js')]
  ]
  const hash = createHash('sha256')
  for (const name of names.sort()) hash.update(`\n${name}\n`).update(readFileSync(join(root, name)))
  return hash.digest('hex').slice(0, 32)
}

/**
 * Bundle a program into one file.
 *
 * @param {string} root folder of package.json
 * @param {string} file what it is written to, in a folder of node_modules
 * @param {string} entry its main file, from `root`
 * @param {'cjs' | 'esm'} format Node starts CommonJS in less time, and only that can be kept compiled;
 *   ES modules may wait at their top level
 */
export async function bundle(root, file, entry, format) {
  const { build, stop } = await import('esbuild')
  const { outputFiles } = await build({
    write: false,
    entryPoints: [join(root, entry)],
    absWorkingDir: root,
    outfile: file,
    bundle: true,
    plugins: [fewPackages, escaped],
    ...(format === 'cjs' ? asCommonJs : asModule),
    // The build of yaml for browsers parses the same in 0.7 of the time: the one for Node asks the
    // environment at each sign it reads whether to log it.
    alias: { yaml: join(root, 'node_modules', 'yaml', 'browser', 'index.js') },
    platform: 'node',
    format,
    // Node keeps the text as long as it runs: with one letter beyond Latin-1 in it, at twice the size.
    charset: 'ascii',
    minifyWhitespace: true,
    sourcemap: true,
    sourcesContent: false,
    logLevel: 'silent'
  })
  await mkdir(dirname(file), { recursive: true })
  for (const { path, text } of outputFiles)
    await writeFile(path, format === 'cjs' ? text.replaceAll(IMPORTS, IMPORT) : text)
  // It would keep room for the bundle as long as the program runs.
  await stop()
}

/**
 * What stands for `import` of a package where a bundle is compiled by itself: only a file of modules can
 * import some. As long as the word it stands for, so that the source map holds.
 */
export const IMPORT = 'native'

const IMPORTS = /\bimport(?=\("@)/gu

/** PDFKit finds its data files beside its own, which it is no part of any more. */
const PDFKIT =
  "const urlOfPdfkit = require('node:url').pathToFileURL(require.resolve('pdfkit')).href"

/** What modules know of themselves, where there are none. */
const asCommonJs = {
  banner: { js: `const urlOfFile = require('node:url').pathToFileURL(__filename).href; ${PDFKIT}` },
  define: { 'import.meta.url': 'urlOfFile', 'import.meta.dirname': '__dirname' }
}

/** Packages in CommonJS ask for Node's own modules by `require`. */
const asModule = {
  banner: {
    js: `import { createRequire as requireFor } from 'node:module'; const require = requireFor(import.meta.url); ${PDFKIT}`
  }
}

/** Large packages that only some commands load stay outside; to find the files of many costs a start. */
const LEFT_OUT = /^(?:@11ty\/eleventy|nunjucks|esbuild|tsx|pkijs|asn1js|playwright-core)(?:\/|$)/u

const fewPackages = {
  name: 'few-packages',
  setup(build) {
    // Names of packages alone: a path begins with a dot, or is absolute.
    build.onResolve({ filter: /^[@a-z]/ }, ({ path, kind }) =>
      kind !== 'entry-point' && LEFT_OUT.test(path) ? { path, external: true } : undefined
    )
    // What fontkit takes a decoder of its own along for, Node has.
    build.onLoad({ filter: /[\\/]brotli[\\/]decompress\.js$/ }, () => ({
      contents: "module.exports = data => require('node:zlib').brotliDecompressSync(data)"
    }))
    build.onLoad({ filter: /[\\/]pdfkit[\\/]js[\\/][^\\/]+$/ }, async ({ path }) => ({
      contents: (await readFile(path, 'utf8')).replaceAll('import.meta.url', 'urlOfPdfkit')
    }))
  }
}

/** In patterns esbuild leaves letters as they are; in all else it would do the same as this. */
const escaped = {
  name: 'escaped',
  setup(build) {
    build.onLoad({ filter: /[\\/]src[\\/].+\.ts$/ }, async ({ path }) => ({
      contents: (await readFile(path, 'utf8')).replace(/(?<!\\)[^\0-\x7f]/g, escapeOf),
      loader: 'ts'
    }))
  }
}

/** @param {string} unit of UTF-16 */
const escapeOf = unit => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`

async function clearAway(packages, current) {
  for (const name of await readdir(packages)) {
    const folder = join(packages, name)
    if (!name.startsWith(PREFIX) || folder === current) continue
    const { mtimeMs } = await stat(folder)
    if (Date.now() - mtimeMs > KEPT_ms) await rm(folder, { recursive: true, force: true })
  }
}
