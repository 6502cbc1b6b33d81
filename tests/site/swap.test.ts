import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { markerName, writeMarker } from '../../src/site/marker.ts'
import { makeTemporary, recover, swapIn } from '../../src/site/swap.ts'
import { namesIn, workplace } from './workplace.ts'

/** The number of a process that has ended. */
const dead = spawnSync(process.execPath, ['-e', '']).pid

async function site(folder: string, text: string, { whole = true } = {}) {
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'index.html'), text)
  if (whole) await writeMarker(folder, 'public')
}

const shown = (out: string) => readFileSync(join(out, 'index.html'), 'utf8')

async function placeOf() {
  const place = workplace()
  const out = join(place, '_site')
  await site(out, 'old')
  return {
    place,
    out,
    fresh: `${out}.lotfolio-new-${dead}`,
    old: `${out}.lotfolio-old-${dead}`
  }
}

describe('a swap', () => {
  test('puts the new site in the place of the old one and leaves nothing else', async () => {
    const { place, out } = await placeOf()
    const fresh = await makeTemporary(out)
    await site(fresh, 'new')
    await swapIn(fresh, out)
    expect(shown(out)).toBe('new')
    expect(namesIn(place)).toEqual(['_site'])
  })

  test('needs no old site', async () => {
    const out = join(workplace(), 'deep', '_site')
    const fresh = await makeTemporary(out)
    await site(fresh, 'new')
    await swapIn(fresh, out)
    expect(shown(out)).toBe('new')
  })

  test('that fails puts the old site back', async () => {
    const { out, place } = await placeOf()
    await expect(swapIn(join(place, 'missing'), out)).rejects.toThrow('ENOENT')
    expect(shown(out)).toBe('old')
    expect(namesIn(place)).toEqual(['_site'])
  })
})

describe('after a kill', () => {
  test('while the new site was being written, the old one stays', async () => {
    const { place, out, fresh } = await placeOf()
    await site(fresh, 'half', { whole: false })
    await recover(out)
    expect(shown(out)).toBe('old')
    expect(namesIn(place)).toEqual(['_site'])
  })

  test('before the first rename, the old one stays', async () => {
    const { place, out, fresh } = await placeOf()
    await site(fresh, 'new')
    await recover(out)
    expect(shown(out)).toBe('old')
    expect(namesIn(place)).toEqual(['_site'])
  })

  test('between the renames, the new one takes its place', async () => {
    const { place, out, fresh, old } = await placeOf()
    await site(fresh, 'new')
    renameSync(out, old)
    await recover(out)
    expect(shown(out)).toBe('new')
    expect(namesIn(place)).toEqual(['_site'])
  })

  test('between the renames, with the new one gone, the old one comes back', async () => {
    const { place, out, old } = await placeOf()
    renameSync(out, old)
    await recover(out)
    expect(shown(out)).toBe('old')
    expect(namesIn(place)).toEqual(['_site'])
  })

  test('between the renames, a new one without its marker is not taken', async () => {
    const { out, fresh, old } = await placeOf()
    await site(fresh, 'half', { whole: false })
    renameSync(out, old)
    await recover(out)
    expect(shown(out)).toBe('old')
  })

  test('before the old one was removed, it is removed', async () => {
    const { place, out, old } = await placeOf()
    await site(old, 'older')
    await recover(out)
    expect(shown(out)).toBe('old')
    expect(namesIn(place)).toEqual(['_site'])
  })

  test('while the old one was being removed, what is left of it never comes back', async () => {
    const { out, old } = await placeOf()
    renameSync(out, old)
    rmSync(join(old, markerName))
    await recover(out)
    expect(existsSync(out)).toBe(false)
  })

  test('the number of a running process does not keep the site away', async () => {
    const { out } = await placeOf()
    renameSync(out, `${out}.lotfolio-old-${process.ppid}`)
    await recover(out)
    expect(shown(out)).toBe('old')
  })
})

test('the folder of a build still running is left alone', async () => {
  const { place, out } = await placeOf()
  const running = `_site.lotfolio-new-${process.ppid}`
  await site(join(place, running), 'half', { whole: false })
  await recover(out)
  expect(namesIn(place)).toEqual(['_site', running])
})

test("folders that only look like a build's are left alone", async () => {
  const { place, out } = await placeOf()
  const others = ['_site.lotfolio-new', '_site.lotfolio-old-x', 'x_site.lotfolio-old-1']
  for (const name of others) mkdirSync(join(place, name))
  await recover(out)
  expect(namesIn(place)).toEqual(['_site', ...others].sort())
})
