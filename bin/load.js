/** Loads a bundle, compiled: to compile it takes longer than most commands do. */

import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire, SourceMap } from 'node:module'
import { dirname, resolve } from 'node:path'
import { inspect } from 'node:util'
import { Script } from 'node:vm'
import { IMPORT } from './bundle.js'

/**
 * What a bundle in CommonJS exports.
 *
 * What Node made of it is kept beside it, with what a first run needed, for runs of the same release of
 * Node. Where that cannot be read or written, or is of another, only time is lost.
 *
 * @param {string} file its path, absolute
 * @param {string} flags a name for those of Node that were set: what it makes is good for those alone
 */
export function load(file, flags) {
  const kept = `${file}.${process.version}-${process.arch}-${flags}.compiled`
  // The first line stays the first, for the source map.
  const text = `(function (exports, require, module, __filename, __dirname, ${IMPORT}) {\n${readFileSync(file, 'utf8')}\n})`
  const cachedData = readIfThere(kept)
  const script = new Script(text, {
    filename: file,
    lineOffset: -1,
    cachedData
  })
  if (!cachedData || script.cachedDataRejected) process.once('exit', () => keep(script, kept))
  const module = { exports: {} }
  const run = script.runInThisContext()
  const importPackage = name => import(name)
  run(module.exports, createRequire(file), module, file, dirname(file), importPackage)
  return module.exports
}

function readIfThere(file) {
  try {
    return readFileSync(file)
  } catch {
    return undefined
  }
}

/** Whole or not at all: others may read it meanwhile. */
function keep(script, file) {
  const fresh = `${file}.${process.pid}`
  try {
    writeFileSync(fresh, script.createCachedData())
    renameSync(fresh, file)
  } catch {
    rmSync(fresh, { force: true })
  }
}

/**
 * An error nobody foresaw, with the places in its stack as the source has them. Node would do so itself,
 * but reads the map at every start.
 *
 * @param {unknown} error
 * @param {string} file of the bundle
 */
export function told(error, file) {
  const text = inspect(error)
  const payload = readIfThere(`${file}.map`)
  if (!payload) return text
  const map = new SourceMap(JSON.parse(payload.toString()))
  const [before, ...places] = text.split(`${file}:`)
  return [before, ...places.map(place => place.replace(/^(\d+):(\d+)/u, placeInSource))].join('')

  function placeInSource(written, line, column) {
    const { originalSource, originalLine, originalColumn } = map.findEntry(line - 1, column - 1)
    if (originalSource === undefined) return `${file}:${written}`
    return `${resolve(dirname(file), originalSource)}:${originalLine + 1}:${originalColumn + 1}`
  }
}
