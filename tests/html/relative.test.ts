import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { relative } from '../../src/html/relative.ts'

describe('a link from one page to another', () => {
  const rows: readonly [target: string, from: string, link: string][] = [
    ['lots/X/', '/', 'lots/X/index.html'],
    ['lots/X/', '/grades/flake-50/', '../../lots/X/index.html'],
    ['lots/X/', '/lots/', 'X/index.html'],
    ['lots/X/', '/lots/Y/', '../X/index.html'],
    ['lots/X/', '/lots/X/', 'index.html'],
    ['lots/X/', '/lots/X/index.html', 'index.html'],
    ['lots/X/data.json', '/lots/X/', 'data.json'],
    ['lots/X/data.json#n', '/404.html', 'lots/X/data.json#n'],
    ['lots/', '/lots/X/', '../index.html'],
    ['assets/lotfolio.css', '/lots/X/', '../../assets/lotfolio.css'],
    ['', '/lots/X/', '../../index.html'],
    ['/', '/lots/X/', '../../index.html'],
    ['#reading', '/lots/X/', '../../index.html#reading'],
    ['#reading', '/', 'index.html#reading'],
    ['/lots/X/', 'lots/Y/', '../X/index.html'],
    ['a:b/', '/', './a:b/index.html'],
    ['https://tarnfell.example.org/a/', '/lots/', 'https://tarnfell.example.org/a/'],
    ['mailto:papers@tarnfell.example.org', '/lots/', 'mailto:papers@tarnfell.example.org']
  ]
  test.each(rows)('%s from %s', (target, from, link) => {
    expect(relative(target, from)).toBe(link)
  })

  test('leads where it says, wherever the site stands', () => {
    const name = fc.stringMatching(/^[a-zA-Z\d-]{1,5}$/u)
    const folder = fc.array(name, { maxLength: 4 }).map(names => names.map(n => `${n}/`).join(''))
    fc.assert(
      fc.property(folder, folder, name, (to, from, file) => {
        const root = 'https://example.org/some/base/'
        const page = new URL(from, root)
        const toFile = new URL(relative(`${to}${file}`, `/${from}`), page)
        expect(toFile.href).toBe(`${root}${to}${file}`)
        const toFolder = new URL(relative(to, `/${from}`), page)
        expect(toFolder.href).toBe(`${root}${to}index.html`)
      })
    )
  })
})
