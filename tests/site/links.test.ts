/** The demo's pages, both editions: every link and place in a page leads somewhere, and no page is heavy. */

import { existsSync, readFileSync, statSync } from 'node:fs'
import { join, posix } from 'node:path'
import { gzipSync } from 'node:zlib'
import { beforeAll, describe, expect, test } from 'vitest'
import { builtDemo } from './built-demo.ts'
import { pagesIn } from '../browser/render-pages.ts'

/** What a lot's page may weigh: a page that opens at once where the line is thin. */
const MOST_BYTES_SENT = 60_000

/** Unpacked, with so many figures and their workings; in proportion where there are more. */
const MOST_BYTES = 250_000
const FIGURES = 40

const mostBytes = (html: string): number =>
  MOST_BYTES * Math.max(1, (html.match(/<summary>/gu) ?? []).length / FIGURES)

interface Built {
  readonly folder: string
  readonly html: ReadonlyMap<string, string>
}

async function built(edition: 'public' | 'workshop'): Promise<Built> {
  const folder = await builtDemo(edition)
  const read = (path: string) => readFileSync(join(folder, path), 'utf8')
  return { folder, html: new Map(pagesIn(folder).map(path => [path, read(path)])) }
}

const idsIn = (html: string): string[] =>
  [...html.matchAll(/\sid="([^"]*)"/gu)].map(([, id]) => id!)

/** Addresses in a page that lead into this site. */
const linksIn = (html: string): string[] =>
  [...html.matchAll(/\s(?:href|src)="([^"]*)"/gu)]
    .map(([, address]) => address!)
    .filter(address => !/^(?:https?:|mailto:|tel:|data:)/u.test(address))

/** The file that an address in a page asks for; a folder's is its index. */
function fileAt(page: string, address: string): string {
  const path = decodeURI(address.replace(/[?#].*$/u, ''))
  // The private edition's page of a wrong address links from its server's root.
  const isRooted = page === '404.html' && path.startsWith('/')
  const file = isRooted ? path.slice(1) : path ? posix.join(posix.dirname(page), path) : page
  return file.endsWith('/') ? `${file}index.html` : file
}

/** Links of a site that lead nowhere, as 'page: link'. */
function deadLinks({ folder, html }: Built): string[] {
  const places = new Map([...html].map(([path, text]) => [path, new Set(idsIn(text))]))
  const isDead = (page: string, address: string): boolean => {
    const file = fileAt(page, address)
    if (file.startsWith('..') || !existsSync(join(folder, file))) return true
    if (!statSync(join(folder, file)).isFile()) return true
    const id = /#(.*)$/u.exec(address)?.[1]
    // What a script reads of an address is no place in its page.
    return !!id && !id.includes('=') && !places.get(file)?.has(id)
  }
  return [...html].flatMap(([page, text]) =>
    linksIn(text)
      .filter(address => isDead(page, address))
      .map(address => `${page}: ${address}`)
  )
}

describe.each(['public', 'workshop'] as const)('the demo’s %s edition', edition => {
  let demo: Built

  beforeAll(async () => {
    demo = await built(edition)
  }, 180_000)

  test('has no link, script, style or place that leads nowhere', () => {
    expect(linksIn(demo.html.get('index.html')!).length).toBeGreaterThan(10)
    expect(deadLinks(demo)).toEqual([])
  })

  test('has no name twice in a page', () => {
    const twice = [...demo.html].flatMap(([path, html]) =>
      idsIn(html)
        .filter((id, index, all) => all.indexOf(id) !== index)
        .map(id => `${path}: ${id}`)
    )
    expect(twice).toEqual([])
  })

  test('shows no slip of a template', () => {
    for (const [path, html] of demo.html)
      expect(html, path).not.toMatch(/undefined|\[object|\bNaN\b|Infinity|\{\{|\{%/u)
  })

  test('has no lot page that weighs too much', () => {
    const heavy = [...demo.html]
      .filter(([path]) => path.startsWith('lots/'))
      .filter(
        ([, html]) =>
          Buffer.byteLength(html) > mostBytes(html) || gzipSync(html).length > MOST_BYTES_SENT
      )
      .map(([path, html]) => [path, Buffer.byteLength(html), mostBytes(html)])
    expect(heavy).toEqual([])
  })
})
